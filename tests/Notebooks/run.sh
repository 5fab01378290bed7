#!/usr/bin/env bash
# Packs all packages and runs every example notebook as an analyst does: in a copy outside the repository, with the packages from a folder. A cell
# that throws fails the run, and so does a result that did not show itself.
set -euo pipefail
cd "$(dirname "$0")/../.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT=1

# A version that no cache has seen, since a package cache never reads the same version twice. The assemblies keep theirs, so that nothing is built anew.
version="0.1.0-notebook.$(date +%s)"
work="$(mktemp -d)"
packages="${NUGET_PACKAGES:-$HOME/.nuget/packages}"
trap 'rm -rf "$work" "$packages"/oilcondition*/"$version"' EXIT

dotnet tool restore > /dev/null
dotnet pack OilCondition.sln -c Release -o "$work/feed" -p:PackageVersion="$version" --nologo -v quiet

# The notebooks find the data where they find it in the repository.
mkdir -p "$work/examples/HarrowPoint" "$work/tests/Reference" "$work/.config"
cp -r examples/notebooks "$work/examples/notebooks"
cp -r examples/HarrowPoint/Data "$work/examples/HarrowPoint/Data"
cp -r tests/Reference/nist "$work/tests/Reference/nist"
cp .config/dotnet-tools.json "$work/.config/"
printf '<configuration><packageSources><add key="packed" value="feed" /></packageSources></configuration>\n' > "$work/nuget.config"

cd "$work/examples/notebooks"
for notebook in *.ipynb; do
  begun="$(date +%s)"
  dotnet tool run dotnet-repl --run "$notebook" --exit-after-run --output-path "$work/$notebook" --output-format ipynb > "$work/log.txt" 2>&1 \
    || { cat "$work/log.txt"; echo "$notebook: a cell failed"; python3 "$OLDPWD/tests/Notebooks/check.py" "$work/$notebook" || true; exit 1; }
  python3 "$OLDPWD/tests/Notebooks/check.py" "$work/$notebook"
  echo "$notebook: every cell ran, in $(($(date +%s) - begun)) s"
done

# For those who want to look at what the notebooks show.
if [ -n "${NOTEBOOK_OUTPUT:-}" ]; then
  mkdir -p "$NOTEBOOK_OUTPUT"
  cp "$work"/*.ipynb "$NOTEBOOK_OUTPUT/"
fi
