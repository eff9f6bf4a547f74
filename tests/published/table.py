"""Print the table of published examples: `python tests/published/table.py`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

import harness  # noqa: E402


def main(wanted: list[str]) -> int:
    bad = 0
    alike: list[bool] = []
    bodies: list[bool] = []
    apart: list[str] = []
    print(f"{'example':32} {'answers':>9} {'proof':>6} {'fewest':>7} {'author':>7}  source")
    for name in wanted or harness.names():
        case = harness.run(name)
        right = sum(a.agrees for a in case.answers)
        good = not case.faults and right == len(case.record["answer"]) and case.proved and case.shorter
        bad += not good
        if case.begins_alike is not None:
            alike.append(case.begins_alike)
            bodies.append(case.begins_with_body)
            if not case.begins_alike:
                theirs = f"{case.record['author_first_body']}, {case.record.get('author_first_centre') or 'forces'}"
                apart.append(f"    {name}: the author begins with {theirs}; ours with {case.first_body}, {case.first_centre or 'forces'}")
        print(f"{name:32} {right:4}/{len(case.record['answer']):<4} {'yes' if case.proved else 'NO':>6} {'-' if case.fewest is None else case.fewest:>7} "
              f"{case.author or '-':>7}  {case.record['source'][:60]}{'' if good else '   <<<'}")
        for a in case.answers:
            if a.wrong:
                print(f"    {a.name}: the source prints {a.printed} {a.unit} wrongly ({a.wrong}); its own data give {a.ours:.6g} {a.our_sense}")
        if wanted or not good:
            for f in case.faults:
                print(f"    fault: {f}")
            for a in case.answers:
                if wanted or not a.agrees:
                    print(f"    {a.name}: printed {a.printed} {a.unit} {a.sense}, ours {a.ours} {a.our_sense}{'' if a.agrees else '  <<<'}")
    if alike:
        print(f"{sum(bodies)} of {len(bodies)} routes begin with the author's free body, {sum(alike)} of them about the author's point as well")
        print("\n".join(apart))
    print(f"{len(wanted or harness.names())} examples, {bad} not as published")
    return bad


if __name__ == "__main__":
    sys.exit(1 if main(sys.argv[1:]) else 0)
