#!/bin/sh
# Coverage-guided fuzzing of everything Pourbook reads, on the stable toolchain.
#
#   tests/fuzz/run.sh [SECONDS [TARGET…]]   build, then each target (document mesh obj ply threemf entry stock log) for so many seconds (60)
#   tests/fuzz/run.sh --self-test           build with a planted bug in every target; each must be found, starting from the seeds
#
# Ends with 1 where an input broke something; the input is kept and named. To run it again: BINARY INPUT.
# Once it is mended, copy the input to tests/fuzz/found/TARGET/: everything there is tried first on every run.
#
# Needs a C++17 compiler for the fuzzing engine, which the package libfuzzer-sys brings as source. Debian: g++
# Where the program has other dependencies than before, `cargo update --workspace` here renews Cargo.lock.
# What is learned (corpus, crashes, logs) stays under $CARGO_TARGET_DIR/fuzz, outside the source.
set -eu

here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
host=$(rustc -vV | sed -n 's/^host: //p')
export CARGO_TARGET_DIR="${CARGO_TARGET_DIR:-$here/target}"
out="$CARGO_TARGET_DIR/fuzz"
targets="${TARGETS:-document mesh obj ply threemf entry stock log}"

# Counters on every edge, a table of their places, and the operands of comparisons, so that the engine sees what an input reached and what it
# was compared with. With --target these flags stay off build scripts, which could not be linked with them.
flags="-Cpasses=sancov-module -Ccodegen-units=1 --cfg fuzzing"
for flag in level=4 inline-8bit-counters pc-table trace-compares; do
    flags="$flags -Cllvm-args=-sanitizer-coverage-$flag"
done

# build NAME [CARGO ARGUMENTS]: leaves the binaries in $out/bin-NAME
build() {
    name=$1
    shift
    RUSTFLAGS="$flags" cargo build --locked --quiet --manifest-path "$here/Cargo.toml" --target "$host" --bins "$@"
    mkdir -p "$out/bin-$name"
    for target in $targets; do
        cp "$CARGO_TARGET_DIR/$host/debug/$target" "$out/bin-$name/$target"
    done
}

# Longest input of a target in bytes: above the longest seed, and short enough for thousands of inputs a second or so.
longest() {
    case $1 in
        document) echo 24000 ;;
        mesh) echo 20480 ;;
        obj | ply) echo 4096 ;;
        threemf) echo 6000 ;;
        entry) echo 210 ;;
        stock) echo 6000 ;;
        log) echo 2000 ;;
    esac
}

dictionary() {
    case $1 in
        document | stock) echo "$here/words/ron.dict" ;;
        *) echo "$here/words/$1.dict" ;;
    esac
}

# seed TARGET [found]: everything of a kind that lies in the repository, one file an input; with `found` also what once broke something.
seed() {
    seeds="$out/seeds/$1"
    rm -rf "$seeds"
    mkdir -p "$seeds"
    case $1 in
        document)
            find "$root/sample-jobs" "$root/tests" -name '*.ron' -size -24k -not -path '*/fuzz/*' | while read -r file; do
                cp "$file" "$seeds/$(echo "${file#"$root"/}" | tr / _)"
            done ;;
        mesh)
            find "$root/tests/outside/meshes" "$root/sample-jobs" -name '*.stl' -size -20k | while read -r file; do
                cp "$file" "$seeds/$(basename "$file")"
            done ;;
        obj | ply | threemf)
            find "$root/tests/outside/meshes" -name "*.$(echo "$1" | sed s/three/3/)" -size -6k | while read -r file; do
                cp "$file" "$seeds/$(basename "$file")"
            done ;;
        entry)
            # Each line: the first byte of the input as an octal number, a space, the entry.
            number=0
            while read -r first entry; do
                number=$((number + 1))
                printf "\\$first%s" "$entry" > "$seeds/$number"
            done < "$here/words/entries.txt" ;;
        stock)
            # Entry by entry, as a list of one and as an overlay that adds it under its own id or another's.
            cat "$root"/resources/stock/*.ron | awk -v seeds="$seeds" '
                /^    [A-Z][A-Za-z]*\(\($/ { entry = ""; inside = 1 }
                inside { line = $0; sub(/^    /, "", line); entry = entry line "\n" }
                inside && /^    \)\),$/ {
                    inside = 0; number++
                    print "[\n" entry "]" > (seeds "/entry-" number)
                    sub(/,\n$/, "", entry)
                    if (number % 2) print "([Hide(\"base-89\"), Replace(base_hash: \"00112233445566778899aabbccddeeff\", entry: " entry ")])" > (seeds "/replace-" number)
                    else { sub(/id: "/, "id: \"own-", entry); print "([Add(" entry ")])" > (seeds "/add-" number) }
                }' ;;
    esac
    for kept in seeds ${2:-}; do
        if [ -d "$here/$kept/$1" ]; then cp "$here/$kept/$1"/* "$seeds/"; fi
    done
}

fuzz() {
    seconds=$1
    target=$2
    seed "$target" found
    mkdir -p "$out/corpus/$target" "$out/crashes/$target"
    log="$out/$target.log"
    status=0
    "$out/bin-fuzz/$target" -max_total_time="$seconds" -max_len="$(longest "$target")" -dict="$(dictionary "$target")" \
        -timeout=20 -rss_limit_mb=2000 -print_final_stats=1 -artifact_prefix="$out/crashes/$target/" \
        "$out/corpus/$target" "$out/seeds/$target" > "$log" 2>&1 || status=$?
    if [ "$status" -ne 0 ]; then
        echo "$target: an input broke something"
        grep -A 2 -E "panicked at|ERROR: libFuzzer" "$log"
        grep "Test unit written" "$log" || tail -20 "$log"
        return 1
    fi
    echo "$target: $(grep '^#[0-9].*DONE' "$log")"
}

# From the seeds, none of which reaches it, the fuzzer must find its way to the planted bug; one that explores nothing does not. What was found
# before is left out: an odd input once kept may well lead straight to the plant.
find_planted() {
    target=$1
    seed "$target"
    work=$(mktemp -d)
    mkdir "$work/corpus"
    log="$out/$target-planted.log"
    if ! "$out/bin-planted/$target" -runs=0 -max_len="$(longest "$target")" -artifact_prefix="$work/" "$out/seeds/$target" > "$log" 2>&1; then
        echo "$target: a seed reaches the planted bug by itself, so nothing is proved"
        return 1
    fi
    "$out/bin-planted/$target" -max_total_time=240 -seed=1 -max_len="$(longest "$target")" -dict="$(dictionary "$target")" \
        -artifact_prefix="$work/" "$work/corpus" "$out/seeds/$target" > "$log" 2>&1 || true
    rm -rf "$work"
    if grep -q 'planted bug found' "$log"; then
        echo "$target: found the planted bug after $(grep -o '^#[0-9]*' "$log" | tail -1 | tr -d '#') inputs or a little more"
    else
        echo "$target: the planted bug was NOT found"
        tail -20 "$log"
        return 1
    fi
}

failed=0
if [ "${1:-}" = --self-test ]; then
    build planted --features planted
    for target in $targets; do
        find_planted "$target" || failed=1
    done
else
    seconds=${1:-60}
    [ $# -eq 0 ] || shift
    [ $# -eq 0 ] || targets_wanted=$*
    build fuzz
    for target in ${targets_wanted:-$targets}; do
        fuzz "$seconds" "$target" || failed=1
    done
fi
exit $failed
