"""Which length of pipe sounds D2? Asks all at once: python3 tubes.py COMMAND, where COMMAND starts ColumnTool."""

import sys

from engine import Engine, NoAnswer


def tube(millimetres):
    return {
        "column": 1,
        "air": {"temperature": "20 °C", "humidity": "50 %"},
        "sections": [{"shape": "cylinder", "diameter": "38 mm", "length": f"{millimetres} mm"}],
        "farEnd": {"kind": "open", "wall": "3 mm"},
    }


sys.stdout.reconfigure(encoding="utf-8")
with Engine(sys.argv[1:]) as engine:
    lengths = range(1100, 1201, 20)
    asked = [engine.ask("resonances", document=tube(length), count=1) for length in lengths]
    for length, answer in zip(lengths, asked):
        first = answer.result()["resonances"][0]
        print(f"{length} mm  {first['frequencyHz']:.3f} Hz  {first['pitch']} {first['cents']:+.1f} cents")

    found = engine.ask("length", document=tube(1100), section=1, pitch="D2").result()
    print(f"D2: {found['lengthMetres'] * 1000:.2f} mm")

    try:
        engine.ask("length", document=tube(-5), section=1, pitch="D2").result()
    except NoAnswer as problem:
        print(f"{problem.code}, {problem.place}: {problem}")
