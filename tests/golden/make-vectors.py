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
    write(
        "matching.json",
        "skrf.media.DefinedGammaZ0(f, z0, gamma): inductor, capacitor, resistor, shunt, shunt_inductor, shunt_capacitor, line, "
        "open, short; skrf.network.a2s for an ideal transformer; cascaded with ** from the radio to the load (Network.s, z2s)",
        matching_vectors(),
        note="Chains from the load to the radio. A coil's resistance is its reactance over q, a capacitor's conductance its "
        "susceptance over q (across) or its resistance its reactance over q (in series). deliveredFraction: what reaches the "
        "load of what goes in, |S21|^2 (1 - |GL|^2) / (|1 - S22 GL|^2 (1 - |Gin|^2)).",
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


LINE_KINDS = [
    # own impedance, speed over that of light, matched loss in dB per 100 m
    {"characteristicOhms": 50, "velocityFactor": 0.66, "dbPer100M": 6.5},
    {"characteristicOhms": 75, "velocityFactor": 0.82, "dbPer100M": 2.5},
    {"characteristicOhms": 405, "velocityFactor": 0.91, "dbPer100M": 0.7},
]
SPEED_OF_LIGHT = 299_792_458
CHAIN_COUNT = 240


def matching_vectors():
    """Loads behind chains of one to four parts of all kinds, drawn at random."""
    chooser = random.Random(SEED + 2)
    vectors = []
    while len(vectors) < CHAIN_COUNT:
        frequency = chooser.uniform(1.8e6, 30e6)
        load = complex(10 ** chooser.uniform(0, 3.3), chooser.choice([-1, 1]) * 10 ** chooser.uniform(0, 3.2))
        parts = [random_part(chooser) for _ in range(chooser.randint(1, 4))]
        network = None
        for part in parts:
            two_port = network_of(part, frequency)
            # From the radio to the load: what is nearer to the radio comes first.
            network = two_port if network is None else two_port ** network
        s = network.s[0]
        reflection_load = skrf.network.z2s(numpy.array([[[load]]]), z0=50)[0, 0, 0]
        reflection_in = s[0, 0] + s[0, 1] * s[1, 0] * reflection_load / (1 - s[1, 1] * reflection_load)
        delivered = (
            abs(s[1, 0]) ** 2
            * (1 - abs(reflection_load) ** 2)
            / (abs(1 - s[1, 1] * reflection_load) ** 2 * (1 - abs(reflection_in) ** 2))
        )
        vectors.append(
            {
                "frequencyHz": frequency,
                "load": ohms(load),
                "chain": parts,
                "reflection": pair(reflection_in),
                "deliveredFraction": float(delivered),
            }
        )
    return vectors


def random_part(chooser):
    kind = chooser.choice(["coil", "capacitor", "transformer", "line", "stub"])
    if kind == "coil":
        placing = chooser.choice(["series", "across"])
        return {"kind": kind, "placing": placing, "inductanceHenry": 10 ** chooser.uniform(-7, -5), "q": chooser.choice([50, 200])}
    if kind == "capacitor":
        placing = chooser.choice(["series", "across"])
        return {"kind": kind, "placing": placing, "capacitanceFarad": 10 ** chooser.uniform(-11, -8.5), "q": 1000}
    if kind == "transformer":
        is_real = chooser.random() < 0.5
        return {
            "kind": kind,
            "ratio": chooser.choice([4, 9, 49, 64]),
            "magnetisingHenry": 10 ** chooser.uniform(-6, -5) if is_real else None,
            "leakageHenry": 10 ** chooser.uniform(-8, -7) if is_real else None,
        }
    line = {**chooser.choice(LINE_KINDS), "lengthM": round(chooser.uniform(0.3, 25), 2)}
    return {"kind": kind, **line} if kind == "line" else {"kind": kind, "end": chooser.choice(["open", "short"]), **line}


def network_of(part, frequency):
    """A part as a two-port at 50 ohm, its first port towards the radio."""
    media = media_of(frequency, 50, 0)
    angular = 2 * math.pi * frequency
    if part["kind"] == "coil":
        henry, q = part["inductanceHenry"], part["q"]
        in_series = media.resistor(angular * henry / q) ** media.inductor(henry)
        return in_series if part["placing"] == "series" else media.shunt(in_series ** media.short())
    if part["kind"] == "capacitor":
        farad, q = part["capacitanceFarad"], part["q"]
        if part["placing"] == "series":
            return media.resistor(1 / (angular * farad * q)) ** media.capacitor(farad)
        loss = media.shunt(media.resistor(q / (angular * farad)) ** media.short())
        return loss ** media.shunt_capacitor(farad)
    if part["kind"] == "transformer":
        turns = math.sqrt(part["ratio"])
        ideal = skrf.Network(f=[frequency], f_unit="Hz", z0=50, s=skrf.network.a2s(numpy.array([[[1 / turns, 0], [0, turns]]], dtype=complex)))
        if part["magnetisingHenry"] is None:
            return ideal
        return media.inductor(part["leakageHenry"]) ** media.shunt_inductor(part["magnetisingHenry"]) ** ideal
    own = media_of(frequency, part["characteristicOhms"], part["dbPer100M"], part["velocityFactor"])
    if part["kind"] == "line":
        line = own.line(part["lengthM"], "m")
        line.renormalize(50)
        return line
    end = own.open() if part["end"] == "open" else own.short()
    stub = own.line(part["lengthM"], "m") ** end
    stub.renormalize(50)
    return media.shunt(stub)


def media_of(frequency, z0, db_per_100_m, velocity_factor=1.0):
    gamma = complex(db_per_100_m / 100 * NEPERS_PER_DB, 2 * math.pi * frequency / (velocity_factor * SPEED_OF_LIGHT))
    return skrf.media.DefinedGammaZ0(
        frequency=skrf.Frequency(frequency, frequency, 1, "Hz"), z0=z0, gamma=gamma
    )


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
