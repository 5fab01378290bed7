#!/usr/bin/env bash
# Packs all packages, looks into them, installs them from a folder into a throwaway project outside the repository, and calls them.
set -euo pipefail
cd "$(dirname "$0")/../.."

# A version that no cache has seen, since a package cache never reads the same version twice.
version="0.1.0-check.$(date +%s)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT

dotnet pack OilCondition.sln -c Release -o "$work/feed" -p:Version="$version" --nologo -v quiet

for name in OilCondition OilCondition.ControlCharts OilCondition.LabFiles OilCondition.Planning OilCondition.Reporting OilCondition.Spreadsheets; do
  package="$work/feed/$name.$version.nupkg"
  test -f "$work/feed/$name.$version.snupkg" || { echo "$name: the symbols package is missing"; exit 1; }
  contents="$(python3 -m zipfile -l "$package" 2>/dev/null || unzip -l "$package")"
  for part in README.md "$name.dll" "$name.xml"; do
    grep -q "$part" <<< "$contents" || { echo "$name: $part is missing from the package"; exit 1; }
  done
  echo "$name $version: package, symbols, README and documentation are there"
done

mkdir "$work/consumer"
cp tests/Packages/Consumer/Consumer.csproj tests/Packages/Consumer/Program.cs "$work/consumer"
printf '<Project/>\n' > "$work/consumer/Directory.Build.props"
printf '<configuration><packageSources><add key="packed" value="%s" /></packageSources></configuration>\n' "$work/feed" > "$work/consumer/nuget.config"
dotnet run --project "$work/consumer" -c Release -p:OilConditionVersion="$version"
for name in oilcondition oilcondition.labfiles oilcondition.reporting; do
  rm -rf "${NUGET_PACKAGES:-$HOME/.nuget/packages}/$name/$version"
done
echo "The packages install from a folder and work."
