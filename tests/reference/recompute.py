#!/usr/bin/env python3
"""Recomputes the reference fixtures.

    python recompute.py            writes fixtures/*.json
    python recompute.py --check    recomputes and compares with the committed files; exit code 1 on a difference
    python recompute.py NAME…      only these, with or without --check

Needs exactly the versions in requirements.txt (exit code 2 otherwise).
"""

import argparse
import importlib
import json
import pathlib
import sys
import time
from importlib.metadata import PackageNotFoundError, version

HERE = pathlib.Path(__file__).resolve().parent
FIXTURES = ["water", "moist_air", "wet_coil", "refrigeration_cycle", "heat_pump_map", "heat_pump", "heat_pump_week", "layered_tank",
            "tank_week", "tank_depletion", "money", "weibull", "replacement", "futures",
            "cold_water", "calendar_file"]
# Platforms differ in the last bits of exp, log and linear algebra; the libraries' own iterations stop at
# about 1e-10. A changed relation or library shows far above.
RELATIVE = 1e-8
ABSOLUTE = 1e-9


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--check", action="store_true", help="compare instead of writing")
    parser.add_argument("names", nargs="*", metavar="NAME", help=", ".join(FIXTURES))
    arguments = parser.parse_args()
    unknown = sorted(set(arguments.names) - set(FIXTURES))
    if unknown:
        parser.error(f"no such fixture: {', '.join(unknown)}")
    require_pinned_versions()
    differing = 0
    for name in arguments.names or FIXTURES:
        began = time.monotonic()
        fresh = importlib.import_module(name).compute()
        path = HERE / "fixtures" / f"{name}.json"
        if arguments.check:
            problems = compare_with_file(fresh, path)
            differing += bool(problems)
            print(f"{name}: {'DIFFERS' if problems else 'same'} ({time.monotonic() - began:.1f} s)")
            for problem in problems[:10]:
                print(f"  {problem}")
            if len(problems) > 10:
                print(f"  … and {len(problems) - 10} more")
        else:
            path.write_text(as_text(fresh), encoding="utf-8")
            print(f"{name}: written ({time.monotonic() - began:.1f} s)")
    if differing:
        print(f"{differing} fixture(s) differ from what the libraries compute. If a script or a pinned version was "
              "changed on purpose, run recompute.py without --check and review the difference.", file=sys.stderr)
        return 1
    return 0


def require_pinned_versions():
    wrong = []
    for line in (HERE / "requirements.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, _, wanted = line.partition("==")
            try:
                found = version(name)
            except PackageNotFoundError:
                found = "not installed"
            if found != wanted:
                wrong.append(f"{name}: {found}, wanted {wanted}")
    if wrong:
        print("The reference libraries are not the pinned ones:\n  " + "\n  ".join(wrong) +
              f"\nInstall them: python -m pip install -r {HERE / 'requirements.txt'}", file=sys.stderr)
        sys.exit(2)


def compare_with_file(fresh, path):
    try:
        committed = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        return [f"cannot read {path.name}: {error}"]
    problems = []
    compare("", json.loads(as_text(fresh)), committed, problems)
    return problems


def compare(where, fresh, committed, problems):
    """Collects every place where two JSON values differ: numbers by tolerance, the rest exactly."""
    numbers = (int, float)
    if isinstance(fresh, bool) or not isinstance(fresh, (dict, list, *numbers)):
        if fresh != committed:
            problems.append(f"{where}: computed {fresh!r}, committed {committed!r}")
    elif isinstance(fresh, numbers):
        good = isinstance(committed, numbers) and abs(fresh - committed) <= ABSOLUTE + RELATIVE * abs(fresh)
        if not good:
            problems.append(f"{where}: computed {fresh!r}, committed {committed!r}")
    elif isinstance(fresh, dict):
        if not isinstance(committed, dict) or fresh.keys() != committed.keys():
            problems.append(f"{where}: the named parts differ")
            return
        for key in fresh:
            compare(f"{where}.{key}" if where else key, fresh[key], committed[key], problems)
    elif not isinstance(committed, list) or len(fresh) != len(committed):
        problems.append(f"{where}: the lists differ in length")
    else:
        for index, (a, b) in enumerate(zip(fresh, committed)):
            compare(f"{where}[{index}]", a, b, problems)


def as_text(value, indent=0):
    """JSON with one table row to a line: small, and readable in a diff."""
    pad = " " * (indent + 1)
    if isinstance(value, dict):
        parts = [f"{pad}{json.dumps(k, ensure_ascii=False)}: {as_text(v, indent + 1).strip()}" for k, v in value.items()]
        text = "{\n" + ",\n".join(parts) + "\n" + " " * indent + "}"
    elif isinstance(value, list) and value and isinstance(value[0], (list, dict)):
        rows = [pad + (as_text(row, indent + 1).strip() if has_tables(row) else as_line(row)) for row in value]
        text = "[\n" + ",\n".join(rows) + "\n" + " " * indent + "]"
    else:
        text = as_line(value)
    return text + ("\n" if indent == 0 else "")


def as_line(value):
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def has_tables(row):
    return isinstance(row, dict) and any(isinstance(part, dict) or len(as_line(part)) > 80 for part in row.values())


if __name__ == "__main__":
    sys.exit(main())
