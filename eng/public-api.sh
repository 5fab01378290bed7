#!/usr/bin/env bash
# Writes the public API of every package into its PublicAPI.Unshipped.txt. The difference is then read in review.
set -euo pipefail
cd "$(dirname "$0")/.."

for project in src/*/*.csproj; do
  unshipped="$(dirname "$project")/PublicAPI.Unshipped.txt"
  printf '#nullable enable\n' > "$unshipped"
  dotnet format analyzers "$project" --diagnostics RS0016 --severity warn
  # What a source generator makes the formatter does not mend: the analyzer names it.
  { dotnet build "$project" -f net10.0 -c Release -p:Analyze=true --nologo --no-incremental || true; } |
    { grep -oP "error RS0016: Symbol '\K[^']+(?=' is not part)" || true; } | sort -u >> "$unshipped"
  sed -i '/^$/d' "$unshipped"
done
