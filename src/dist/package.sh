#!/usr/bin/env bash
# Makes what people install from the built jar: an application image that needs no Java, and a Debian
# package of it. Called by `mvn -Pdist package`; needs a JDK 17 or later that
# jlink can take modules from, binutils, zip, unzip and dpkg-deb.
#   package.sh TARGET_FOLDER VERSION
#
# Decisions: a few lines of our own around jlink, because jpackage puts everything under /opt and knows neither manual
# page nor completion.
set -euo pipefail
dist=$(cd "$(dirname "$0")" && pwd)
target=$(cd "$1" && pwd)
version=$2
java_home=${JAVA_HOME:-$(dirname "$(dirname "$(readlink -f "$(command -v javac)")")")}
image=$target/dist/charline
jar=$target/charline.jar
export LC_ALL=C.UTF-8

case $(uname -sm) in
  "Linux x86_64") native=Linux/x86_64 arch=amd64 ;;
  "Linux aarch64") native=Linux/aarch64 arch=arm64 ;;
  *) echo "The image is made on Linux, x86_64 or aarch64, not on $(uname -sm); use the jar there." >&2; exit 1 ;;
esac

if [ ! -f "$target/bom.json" ]; then
  echo "The bill of materials is missing: its plugin works online only, so run Maven without -o." >&2
  exit 1
fi

rm -rf "$target/dist"
mkdir -p "$image"/{bin,lib} "$image/share"

# The Java that charline needs, and no more; jdk.charsets reads trial sheets of old spreadsheets. Windows and
# fonts (java.desktop) are asked for by four classes of libraries that nothing here loads.
modules=$("$java_home/bin/jdeps" --multi-release 17 --ignore-missing-deps --print-module-deps "$jar" |
  tr , '\n' | grep -vx java.desktop | paste -sd,)
released=$("$java_home/bin/java" -XshowSettings:properties -version 2>&1 | sed -n 's/.*java.version.date = //p')
if [ -n "$released" ] && [ "$(date -d "$released" +%s)" -lt "$(date -d '200 days ago' +%s)" ]; then
  echo "The Java that goes into the image is of $released; release with a newer update of it." >&2
fi
compress=(--compress=1)
# Java 21 and later warn of it, and their other kinds slow the start.
if "$java_home/bin/jlink" --help | grep -q zip-; then compress=(); fi
"$java_home/bin/jlink" --add-modules "$modules,jdk.charsets" --strip-debug --no-header-files \
  --no-man-pages "${compress[@]}" --output "$image/runtime"
"$image/runtime/bin/java" -Xshare:dump >/dev/null

cp "$jar" "$image/lib/charline.jar"
unzip -q -j -o "$jar" "org/sqlite/native/$native/libsqlitejdbc.so" -d "$image/lib"
# Unpacked once, here; those of other systems are of no use to this image.
zip -q -d "$image/lib/charline.jar" 'org/sqlite/native/*'
install -m 755 "$dist/charline" "$image/bin/charline"

# Manual, completion, licences and bill of materials.
"$image/runtime/bin/java" -cp "$jar" charline.cli.Handbook "$image/share"
gzip -9n "$image/share/charline.1"
unzip -q -j -o "$jar" META-INF/THIRD-PARTY.txt META-INF/licenses/charline.txt -d "$image/share"
cp "$target/bom.json" "$image/share/bom.json"

cat >> "$image/share/THIRD-PARTY.txt" <<JAVA
     (GPL2 w/ CPE) OpenJDK, as runtime in this package; its licences lie in runtime/legal
JAVA

# What a person starts most, recording a patch and looking one up, and what takes longest, windows and the models
# behind them, when they are computed and when they were kept. The jar goes by the path that the launcher gives it.
exec 9<"$image/lib/charline.jar"
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
java=("$image/runtime/bin/java" -XX:+UseSerialGC -Dorg.sqlite.lib.path="$image/lib"
  -Dorg.sqlite.lib.name=libsqlitejdbc.so --enable-native-access=ALL-UNNAMED -cp /proc/self/fd/9)
export CHARLINE_CACHE="$scratch/fits"
"${java[@]}" charline.cli.Main demo --to "$scratch/demo" >/dev/null
recording=(
  "board add boathouse-9 --wood pine"
  "finish add wall-latex --coat latex:pale"
  "patch add --rig heron --board boathouse-9 --finish wall-latex --power 60% --hand 22mm/s --passes 1 --outcome residue"
  "patch read last --passes 2 --outcome clean"
  "patch add --like last --hand 18mm/s --outcome clean"
  "patch show last"
  "find clean latex"
  "complete board b"
)
asking=(
  "window latex pine"
  "next latex pine"
  "onset latex pine"
  "sheet latex pine --replace --to $scratch/sheet.html"
  "quote latex pine --area 4.5m2"
  "risk latex pine --power 60% --hand 30mm/s"
)

# archive NAME COMMAND...: what these commands need, from Java 25 on as an ahead-of-time cache. It pays at each start
# for all that it holds, so there are two; and it holds no machine code, which would be that of this machine. Before
# Java 25 it is one class-data archive, a static one, since it alone takes classes that were compiled for old versions
# of Java, as those of picocli and Commons Math are.
if [ "$("$java_home/bin/jlink" --version | cut -d. -f1)" -ge 25 ]; then
  exec 9<&-
  "$java_home/bin/java" "$dist/NewerClassFiles.java" "$image/lib/charline.jar"
  "$java_home/bin/java" "$dist/PlainRecords.java" "$image/lib/charline.jar" charline
  exec 9<"$image/lib/charline.jar"
  archive() {
    local cache=$image/lib/$1.aot
    rm -rf "$CHARLINE_CACHE"
    cp "$scratch/demo/boathouse.db" "$scratch/$1.db"
    CHARLINE_LOG="$scratch/$1.db" "${java[@]}" -XX:AOTMode=record -XX:AOTConfiguration="$scratch/$1.conf" \
      charline.cli.Rehearsal "${@:2}" >/dev/null
    "${java[@]}" -XX:+UnlockDiagnosticVMOptions -XX:-AOTAdapterCaching -XX:-AOTStubCaching \
      -XX:AOTMode=create -XX:AOTConfiguration="$scratch/$1.conf" -XX:AOTCache="$cache" >/dev/null
  }
  archive recording "${recording[@]}"
  archive asking "${asking[@]}" "${asking[@]}"
else
  rm -rf "$CHARLINE_CACHE"
  CHARLINE_LOG="$scratch/demo/boathouse.db" "${java[@]}" -Xlog:disable -Xshare:off \
    -XX:DumpLoadedClassList="$scratch/classes.lst" \
    charline.cli.Rehearsal "${recording[@]}" "${asking[@]}" "${asking[@]}" >/dev/null
  # Lambdas of interfaces of Java 5 cannot be archived, and Java 17 crashes over some lists that name them.
  sed -i '/^@lambda-proxy.*org\/apache\/commons\/math3/d' "$scratch/classes.lst"
  "${java[@]}" -Xlog:disable -Xshare:dump -XX:SharedClassListFile="$scratch/classes.lst" \
    -XX:SharedArchiveFile="$image/lib/charline.jsa" >/dev/null
fi
exec 9<&-

# The Debian package.
root=$target/dist/deb
mkdir -p "$root/DEBIAN" "$root/usr"/{bin,lib} \
  "$root/usr/share"/{man/man1,bash-completion/completions,zsh/vendor-completions,fish/vendor_completions.d,doc/charline}
cp -a "$image" "$root/usr/lib/charline"
ln -s ../lib/charline/bin/charline "$root/usr/bin/charline"
cp "$image/share/charline.1.gz" "$root/usr/share/man/man1/"
cp "$image/share/charline-completion.bash" "$root/usr/share/bash-completion/completions/charline"
cp "$image/share/charline-completion.zsh" "$root/usr/share/zsh/vendor-completions/_charline"
cp "$image/share/charline-completion.fish" "$root/usr/share/fish/vendor_completions.d/charline.fish"
cat "$image/share/charline.txt" "$image/share/THIRD-PARTY.txt" > "$root/usr/share/doc/charline/copyright"
glibc=$(find "$image" -name '*.so' -exec objdump -T {} + 2>/dev/null | grep -o 'GLIBC_[0-9.]*' | sort -uV | tail -1)
cat > "$root/DEBIAN/control" <<CONTROL
Package: charline
Version: $version
Architecture: $arch
Maintainer: charline <charline@localhost>
Installed-Size: $(du -sk "$root/usr" | cut -f1)
Depends: libc6 (>= ${glibc#GLIBC_}), libgcc-s1, libstdc++6, zlib1g
Section: science
Priority: optional
Description: test-patch logbook and trials analyser for laser stripping of wood
 Keeps the test patches that are burned before a finish is stripped with a
 cleaning laser, and finds the settings that lift the finish and leave the
 wood unburned, with how sure that is.
CONTROL
dpkg-deb --root-owner-group -Zgzip --build "$root" "$target/charline_${version}_$arch.deb" >/dev/null
tar -C "$target/dist" -czf "$target/charline-$version-linux-$arch.tar.gz" charline
