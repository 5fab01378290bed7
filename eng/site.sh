#!/usr/bin/env bash
# The pages of docs and the API as a site in artifacts/site; fails on any warning of docfx, such as a broken link or a missing heading.
# No step of .ci/run: two minutes on two cores. Broken links between pages fail a test as well.
set -euo pipefail
cd "$(dirname "$0")/.."
rm -rf artifacts/api artifacts/site
dotnet tool restore
dotnet docfx docs/docfx.json --warningsAsErrors
