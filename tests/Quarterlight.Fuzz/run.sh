#!/bin/bash
# Fuzzes the readers of sound files: bash tests/Quarterlight.Fuzz/run.sh --minutes 10 --seed 1 [--keep] [--ffmpeg /path/of/ffmpeg]
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
dotnet build "$here" --configuration Release --verbosity quiet -maxcpucount:1
exec dotnet "$here/bin/Release/net10.0/Quarterlight.Fuzz.dll" --corpus "$here/../Quarterlight.Audio.Tests/corpus" "$@"
