"""Writes the golden vectors beside this file: inputs, and what scikit-rf makes of them.

Run with the Python that has Debian's python3-scikit-rf. Nothing here computes an expected value:
every expected number comes out of a function of the library, and each file names that function.
"""

import cmath
import json
import math
import platform
import random
from pathlib import Path

import numpy

# scikit-rf 0.15.4 says numpy.complex, an old alias of Python's complex that numpy 1.24 removed.
# Giving the alias back changes no arithmetic.
ALIAS_RESTORED = not hasattr(numpy, "complex")
if ALIAS_RESTORED:
    numpy.complex = complex

import skrf  # noqa: E402 (the alias must exist before the library runs)
from skrf import tlineFunctions  # noqa: E402
from skrf.io.touchstone import Touchstone  # noqa: E402

HERE = Path(__file__).resolve().parent
TOUCHSTONE_FOLDER = HERE / "touchstone"
SEED = 20
NEPERS_PER_DB = math.log(10) / 20

NAMED_LOADS_OHMS = [
    # resistive
    1, 5, 10, 12.5, 25, 37.5, 49.9, 50, 50.1, 60, 73, 75, 100, 150, 200, 300, 450, 1000, 2450, 5000,
    # purely reactive
    25j, -25j, 50j, -50j, 75j, -75j, 450j, -450j, 2000j, -2000j,
    # near short and near open
    1e-3, 1e-6 + 1e-3j, 0.01 - 0.2j, 1e5, 1e6 + 1e4j, 2e4 - 3e5j,
    # antennas
    73.1 + 42.5j, 36.5 + 21.25j, 30 - 40j, 30 + 40j, 85.2 - 0.1j, 8 - 340j, 22 + 1j, 12.5 - 30j,
]
RANDOM_LOAD_COUNT = 16


def main():
    """Write every file."""
    write("impedance-to-reflection.json", "skrf.network.z2s(z, z0=referenceOhms)", reflection_vectors())
    write(
        "renormalisation.json",
        "skrf.Network(f=..., s=..., z0=fromReferenceOhms).renormalize(toReferenceOhms), power waves, real references",
        renormalisation_vectors(),
    )
    write(
        "line.json",
        "skrf.tlineFunctions.zl_2_zin(z0, zl, theta) and zl_2_Gamma_in(z0, zl, theta), with "
        "theta = matchedLossDb x ln(10)/20 + j x electricalLengthDegrees x pi/180",
        line_vectors(),
        note="Characteristic impedance real. matchedLossDb and electricalLengthDegrees are for the whole line.",
    )
    write("swr.json", "skrf.Network(f=..., s=..., z0=50).s_vswr", swr_vectors())
    write(
        "touchstone.json",
        "skrf.io.touchstone.Touchstone(file).get_sparameter_arrays(), first row and column; referenceOhms is the "
        "resistance of the same reader",
        touchstone_vectors(),
        note="The files in touchstone/ are invented data.",
    )


def reflection_vectors():
    vectors = []
    for reference in [25, 50, 75, 450]:
        loads = loads_ohms()
        s = skrf.network.z2s(as_one_port(loads), z0=reference)
        vectors += [
            {"referenceOhms": reference, "impedance": ohms(load), "reflection": pair(value)}
            for load, value in zip(loads, s[:, 0, 0])
        ]
    return vectors


def renormalisation_vectors():
    references = [25, 50, 75, 300, 450]
    inputs = passive_reflections()
    vectors = []
    for start in references:
        for end in references:
            network = one_port_network(inputs, start)
            network.renormalize(end)
            vectors += [
                {"fromReferenceOhms": start, "toReferenceOhms": end, "reflection": pair(before), "renormalised": pair(after)}
                for before, after in zip(inputs, network.s[:, 0, 0])
            ]
    return vectors


def line_vectors():
    loads = [25, 50, 150, 40 + 70j, 30 - 40j, 73.1 + 42.5j, 2450, 8 - 340j, 60 + 0.5j]
    characteristic_impedances = [50, 75, 300, 450]
    losses_and_lengths = [
        # lossless, at and between the quarter waves
        (0.0, 0.0), (0.0, 45.0), (0.0, 89.0), (0.0, 108.0), (0.0, 180.0), (0.0, 1000.5),
        # short and long cables
        (0.055, 31.6), (0.3, 137.0), (0.5, 200.0), (1.0, 60.0), (2.0, 233.0), (6.2, 5185.4), (12.0, 3600.0),
    ]
    vectors = []
    for z0 in characteristic_impedances:
        for loss_db, length_degrees in losses_and_lengths:
            theta = complex(loss_db * NEPERS_PER_DB, math.radians(length_degrees))
            inputs = tlineFunctions.zl_2_zin(z0, loads, theta)
            reflections = tlineFunctions.zl_2_Gamma_in(z0, loads, theta)
            vectors += [
                {
                    "characteristicImpedanceOhms": z0,
                    "matchedLossDb": loss_db,
                    "electricalLengthDegrees": length_degrees,
                    "load": ohms(load),
                    "inputImpedance": ohms(zin),
                    "inputReflection": pair(reflection),
                }
                for load, zin, reflection in zip(loads, inputs, reflections)
            ]
    return vectors


def swr_vectors():
    inputs = passive_reflections()
    swr = one_port_network(inputs, 50).s_vswr[:, 0, 0]
    return [{"reflection": pair(value), "swr": float(ratio)} for value, ratio in zip(inputs, swr)]


def touchstone_vectors():
    """Write small files in every form of number and unit, and read them back with the library."""
    TOUCHSTONE_FOLDER.mkdir(exist_ok=True)
    vectors = []
    for port_count in [1, 2]:
        for form in ["RI", "MA", "DB"]:
            for unit, hz_per_unit in [("Hz", 1), ("kHz", 1e3), ("MHz", 1e6), ("GHz", 1e9)]:
                for reference in [50, 75]:
                    name = f"{form}-{unit}-{reference}.s{port_count}p".lower()
                    text = touchstone_text(port_count, form, unit, hz_per_unit, reference)
                    vectors.append(read_back(name, text))
    vectors.append(read_back("defaults.s1p", touchstone_text(1, "MA", "GHz", 1e9, 50, option_line="#")))
    vectors.append(read_back("upper-case.s1p", touchstone_text(1, "RI", "MHz", 1e6, 50).upper()))
    vectors.append(read_back("noise.s2p", touchstone_text(2, "MA", "MHz", 1e6, 50) + noise_lines()))
    return vectors


def read_back(name, text):
    """Write the file, and return what the library's reader makes of it."""
    path = TOUCHSTONE_FOLDER / name
    path.write_text(text, encoding="ascii")
    reader = Touchstone(str(path))
    frequencies, s = reader.get_sparameter_arrays()
    return {
        "file": f"touchstone/{name}",
        "portCount": reader.rank,
        "referenceOhms": float(reader.resistance),
        "points": [
            {"frequencyHz": float(frequency), "reflection": pair(value)}
            for frequency, value in zip(frequencies, s[:, 0, 0])
        ],
    }


def touchstone_text(port_count, form, unit, hz_per_unit, reference, option_line=None):
    """A Touchstone 1 file of an invented resonant load; a second port hangs on it through a coupler."""
    lines = ["! invented data", option_line or f"# {unit} S {form} R {reference}"]
    for frequency in range(13_800_000, 14_600_001, 100_000):
        detuning = 12 * (frequency / 14_150_000 - 14_150_000 / frequency)
        load = complex(62, 62 * detuning)
        s11 = (load - reference) / (load + reference)
        s21 = 0.31 * cmath.exp(-1j * frequency / 3e6)
        values = [s11] if port_count == 1 else [s11, s21, s21 * 0.5, 0.4 - s11 * 0.2]
        row = [repr(frequency / hz_per_unit)] + [number for value in values for number in in_form(value, form)]
        lines.append(" ".join(row) + (" ! resonance near here" if frequency == 14_100_000 else ""))
    return "\n".join(lines) + "\n"


def noise_lines():
    """Noise parameters follow the network data from the first frequency that goes back."""
    return "! noise\n" + "".join(f"{mhz} 2.1 0.4 {30 + index} 0.35\n" for index, mhz in enumerate([13.8, 14.2, 14.6]))


def in_form(value, form):
    magnitude, degrees = abs(value), math.degrees(cmath.phase(value))
    if form == "RI":
        return [f"{value.real:.12g}", f"{value.imag:.12g}"]
    if form == "MA":
        return [f"{magnitude:.12g}", f"{degrees:.12g}"]
    return [f"{20 * math.log10(magnitude):.12g}", f"{degrees:.12g}"]


def loads_ohms():
    chooser = random.Random(SEED)
    spread = [
        complex(10 ** chooser.uniform(0, 3.5), chooser.choice([-1, 1]) * 10 ** chooser.uniform(0, 3.5))
        for _ in range(RANDOM_LOAD_COUNT)
    ]
    return [complex(load) for load in NAMED_LOADS_OHMS] + spread


def passive_reflections():
    """Reflection coefficients below 1 in magnitude, from a perfect match to nearly all reflected."""
    chooser = random.Random(SEED + 1)
    magnitudes = [0.0, 1e-6, 0.01, 0.1, 1 / 3, 0.5, 0.9, 0.999, 0.9999]
    magnitudes += [chooser.random() for _ in range(15)]
    return [magnitude * cmath.exp(1j * chooser.uniform(-math.pi, math.pi)) for magnitude in magnitudes]


def one_port_network(reflections, reference):
    frequencies = numpy.arange(1, len(reflections) + 1)
    return skrf.Network(f=frequencies, f_unit="MHz", s=as_one_port(reflections), z0=reference)


def as_one_port(values):
    return numpy.array(values, dtype=complex).reshape(-1, 1, 1)


def ohms(value):
    return {"resistanceOhms": float(complex(value).real), "reactanceOhms": float(complex(value).imag)}


def pair(value):
    return {"re": float(value.real), "im": float(value.imag)}


def write(name, call, vectors, note=None):
    """One vector a line, so that a change shows as a change of that line. json writes repr of a double."""
    header = {
        "library": "scikit-rf (Debian python3-scikit-rf)",
        "version": skrf.__version__,
        "call": call,
        "python": platform.python_version(),
        "numpy": numpy.__version__,
    }
    if ALIAS_RESTORED:
        header["workaround"] = "numpy.complex, which this numpy no longer has, set to Python's complex before the import"
    if note:
        header["note"] = note
    lines = ",\n".join("    " + json.dumps(vector, allow_nan=False) for vector in vectors)
    text = f'{{\n  "header": {json.dumps(header)},\n  "vectors": [\n{lines}\n  ]\n}}\n'
    (HERE / name).write_text(text, encoding="ascii")
    print(f"{name}: {len(vectors)} vectors")


if __name__ == "__main__":
    main()
