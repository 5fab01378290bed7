#!/usr/bin/env bash
# Writes the public API of every package into its PublicAPI.Unshipped.txt. The difference is then read in review.
set -euo pipefail
cd "$(dirname "$0")/.."

for project in src/*/*.csproj; do
  printf '#nullable enable\n' > "$(dirname "$project")/PublicAPI.Unshipped.txt"
  dotnet format analyzers "$project" --diagnostics RS0016 --severity warn
  sed -i '/^$/d' "$(dirname "$project")/PublicAPI.Unshipped.txt"
done
