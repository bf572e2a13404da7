#!/bin/sh
# Makes the seed-* files of this folder anew with the ffmpeg program (5.1.9 was used): short, and of codings the folder above leaves
# out (seed-ixml-bext.wav was written by hand). The other files are what the fuzzer kept (tests/Quarterlight.Fuzz): damaged on purpose,
# named by their SHA-256.
set -e
cd "$(dirname "$0")"
make() { ffmpeg -nostdin -v error -y -f lavfi -i "$@"; }
tone='0.4*sin(2*PI*700*t)+0.5*lt(mod(t\,0.05)\,0.002)*(2*random(0)-1)'
make "aevalsrc=$tone:s=8000:d=0.3" -bitexact -c:a libmp3lame -b:a 16k seed-mp3-8k-mono.mp3
make "aevalsrc=$tone|$tone:s=22050:d=0.2" -bitexact -c:a libmp3lame -b:a 32k seed-mp3-22k-joint.mp3
make "aevalsrc=$tone|0.3*sin(2*PI*300*t):s=32000:d=0.15" -bitexact -c:a libmp3lame -joint_stereo 0 -b:a 64k -write_xing 0 seed-mp3-32k-stereo.mp3
make "aevalsrc=$tone:s=8000:d=0.3" -bitexact -c:a libopus -application voip -b:a 8k seed-opus-narrow.opus
make "aevalsrc=$tone|$tone:s=48000:d=0.2" -bitexact -c:a libopus -application voip -b:a 32k -frame_duration 60 seed-opus-voice-stereo.opus
make "aevalsrc=$tone:s=48000:d=0.1" -bitexact -c:a libopus -application lowdelay -b:a 48k -frame_duration 2.5 seed-opus-short-frames.opus
make "aevalsrc=$tone|$tone|0|0|0|$tone:s=48000:d=0.1:c=5.1" -bitexact -c:a libopus -b:a 96k seed-opus-6ch.opus
make "aevalsrc=$tone:s=8000:d=0.3" -bitexact -c:a libvorbis -q:a 0 seed-vorbis-8k-mono.ogg
make "aevalsrc=$tone:s=8000:d=0.03" -bitexact -c:a pcm_s32le seed-pcm32-8k-mono.wav
make "aevalsrc=$tone|$tone:s=8000:d=0.02" -bitexact -c:a pcm_f64le seed-float64-8k-stereo.wav
make "aevalsrc=$tone:s=8000:d=0.02" -bitexact -rf64 always -write_bext 1 -metadata description=Tone -metadata origination_date=2001-02-03 -metadata origination_time=04:05:06 -metadata coding_history=A=PCM -c:a pcm_s24le seed-rf64-bext.wav
