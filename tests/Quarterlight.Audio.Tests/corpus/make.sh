#!/bin/sh
# Makes the sound files of this folder anew with the ffmpeg program (5.1.9 was used). Each holds a sine of 1 kHz on the left and,
# in stereo, of 500 Hz on the right; peak 0.5 of full scale, 1 s long.
set -e
cd "$(dirname "$0")"
mono="-f lavfi -i aevalsrc=0.5*sin(2*PI*1000*t):s=48000:d=1"
stereo="-f lavfi -i aevalsrc=0.5*sin(2*PI*1000*t)|0.5*sin(2*PI*500*t):s=44100:d=1"
make() { ffmpeg -nostdin -v error -y "$@"; }
make -f lavfi -i "aevalsrc=0.5*sin(2*PI*1000*t):s=8000:d=1" -bitexact -c:a pcm_s24le pcm24-8k-mono.wav
make -f lavfi -i "aevalsrc=0.5*sin(2*PI*1000*t):s=8000:d=1" -bitexact -c:a pcm_f32le float-8k-mono.wav
make -f lavfi -i "aevalsrc=0.5*sin(2*PI*1000*t)|0.5*sin(2*PI*500*t)|0:s=8000:d=1" -bitexact -c:a pcm_s16le extensible-8k-3ch.wav
make -f lavfi -i "aevalsrc=0.5*sin(2*PI*1000*t):s=8000:d=1" -bitexact -rf64 always -c:a pcm_s16le rf64-8k-mono.wav
make -f lavfi -i "aevalsrc=0.5*sin(2*PI*1000*t):s=8000:d=1" -bitexact -write_bext 1 -metadata description=Tone -metadata originator=ffmpeg -metadata time_reference=4665600000 -c:a pcm_s16le bext-8k-mono.wav
make $stereo -bitexact -c:a libvorbis -q:a 2 vorbis-44k-stereo.ogg
make $mono -bitexact -c:a libopus -b:a 48k opus-48k-mono.opus
make $stereo -bitexact -c:a libopus -b:a 64k opus-48k-stereo.opus
make $mono -bitexact -c:a libmp3lame -b:a 64k mp3-48k-mono.mp3
make $stereo -bitexact -c:a libmp3lame -q:a 4 -write_id3v2 1 mp3-44k-stereo.mp3
make $mono -bitexact -sample_fmt s16 -c:a flac flac-48k-mono.flac
make $stereo -bitexact -c:a aac -b:a 64k aac-44k-stereo.m4a
