#!/usr/bin/env bash
# Packs all packages, looks into them, and calls them as users do: from a folder, out of throwaway projects outside the repository, on .NET, as a
# native program, and from a C# 7.3 plug-in on .NET Framework under Mono. What that needs of the machine it installs.
set -euo pipefail
cd "$(dirname "$0")/../.."
root="$(pwd)"

# A version that no cache has seen, since a package cache never reads the same version twice.
version="0.1.0-check.$(date +%s)"
work="$(mktemp -d)"
packages="${NUGET_PACKAGES:-$HOME/.nuget/packages}"
trap 'rm -rf "$work" "$packages"/oilcondition*/"$version"' EXIT

need() {
  command -v "$1" > /dev/null && return
  echo "installing $2"
  local as=()
  [ "$(id -u)" -eq 0 ] || as=(sudo)
  "${as[@]}" apt-get update -qq
  "${as[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $2 > "$work/apt.log" 2>&1 || { cat "$work/apt.log"; exit 1; }
}

need gcc "gcc libc6-dev"
need mono "mono-devel libmono-cil-dev"

# Packed as anybody may, without the settings of a build server.
CI=false dotnet pack OilCondition.sln -c Release -o "$work/feed" -p:Version="$version" --nologo -v quiet

for project in src/*/; do
  name="$(basename "$project")"
  package="$work/feed/$name.$version.nupkg"
  test -f "$work/feed/$name.$version.snupkg" || { echo "$name: the symbols package is missing"; exit 1; }
  mkdir -p "$work/open/$name"
  python3 -m zipfile -e "$package" "$work/open/$name" 2> /dev/null || unzip -q "$package" -d "$work/open/$name"
  python3 -m zipfile -e "$work/feed/$name.$version.snupkg" "$work/open/$name/symbols" 2> /dev/null || unzip -q "$work/feed/$name.$version.snupkg" -d "$work/open/$name/symbols"
  test -f "$work/open/$name/README.md" || { echo "$name: README.md is missing from the package"; exit 1; }
  for part in "$name.dll" "$name.xml"; do
    find "$work/open/$name/lib" -name "$part" | grep -q . || { echo "$name: $part is missing from the package"; exit 1; }
  done
  if grep -rlaF "$root" "$work/open/$name"; then
    echo "$name: the files above carry the path of this machine"
    exit 1
  fi
  echo "$name $version: package, symbols, README and documentation are there, and no path of this machine"
done

test -f "$work/open/OilCondition.Interactive/interactive-extensions/dotnet/extension.dib" || { echo "OilCondition.Interactive: notebooks find no extension in the package"; exit 1; }

# A throwaway copy of a consumer that knows the packages only.
consumer() {
  cp -r "tests/Packages/$1" "$work/$1"
  printf '<Project/>\n' > "$work/$1/Directory.Build.props"
  printf '<configuration><packageSources><add key="packed" value="%s" /></packageSources></configuration>\n' "$work/feed" > "$work/$1/nuget.config"
}

consumer Consumer
dotnet run --project "$work/Consumer" -c Release -p:OilConditionVersion="$version"
echo "The packages install from a folder and work."

consumer Framework
dotnet build "$work/Framework" -c Release -p:OilConditionVersion="$version" --nologo -v quiet
mono "$work/Framework/bin/Release/net472/Framework.exe" | tee "$work/framework.txt"
dotnet "$work/Framework/bin/Release/net10.0/Framework.dll" > "$work/net.txt"
diff "$work/framework.txt" "$work/net.txt"
echo "They work from C# 7.3 on .NET Framework, with the same texts as on .NET."

consumer NativeAot
dotnet publish "$work/NativeAot" -c Release --use-current-runtime -p:OilConditionVersion="$version" -p:CppCompilerAndLinker=gcc -o "$work/native" --nologo -v quiet
"$work/native/NativeAot"
echo "They work as a native program."
