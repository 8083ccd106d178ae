"""Holds the rhythm against a hidden Markov model that is told the truth, of a library not ours.

    cargo run --release --no-default-features --example accuracy lines 200 0 > feeds
    python3 tests/outside/informed_rhythm.py feeds [--only-print]

Needs hmmlearn and numpy. For each feed, `CategoricalHMM` is given everything that the feed was
drawn from: the baby's own rates, swallowing, runs and rests, the hand's noise, and how long phases
last on average. It sees what the rhythm saw, gap by gap and swallow by swallow, and says the most
probable phase of each suck by the forward-backward algorithm. The rhythm is told none of these
numbers.

Prints the share of sucks in a wrong phase for both, and exits with 1 if the rhythm has more than
`AT_MOST` times as many wrong at any hand of a simulator; with --only-print it tells and judges
nothing. That is where it stands on these two, with room for chance; 1.2 is aimed at.
"""

import json
import math
import sys
from collections import defaultdict

import numpy as np
from hmmlearn.hmm import CategoricalHMM

import wrong_sucks

# The most that the rhythm may have wrong, over what the informed model has.
AT_MOST = 1.5
PHASES = ["quick", "flow", "flutter"]
# Classes of gaps, by their ends in milliseconds; one more is a gap that nobody watched.
ENDS_MS = np.concatenate([np.arange(100, 3_000, 30), np.geomspace(3_000, 600_000, 40)])
MIDDLE_MS = np.sqrt(ENDS_MS[1:] * ENDS_MS[:-1])
CLASSES = len(MIDDLE_MS) + 1
UNSEEN = CLASSES - 1
# How often a gap is not seen is the same in all phases, so that it says nothing.
UNSEEN_SHARE = 0.01
# So many missed sucks in a row are followed.
MISSED_MOST = 6
# No shorter gap is a rest.
REST_MS_LEAST = 1_800
# How much longer a rest is on average than its median: some are long. Near enough for all feeds.
REST_MEAN = 1.2


def normal(away, spread):
    return np.exp(-0.5 * (away / spread) ** 2) / (spread * math.sqrt(2 * math.pi))


def gaps(own, feed):
    """The probability of each class of gap in a phase."""
    mean = 60_000 / own["sucks_per_min"]
    goes_on = 1 - 1 / own["run_sucks"]
    density = np.full(len(MIDDLE_MS), 1e-9)
    share = 1 - feed["missed_suck"]
    for count in range(1, MISSED_MOST + 1):
        spread = math.sqrt(
            count * (own["gap_spread"] * mean) ** 2
            + (feed["rate_spread"] * mean * count) ** 2
            + 2 * feed["jitter_ms"] ** 2
        )
        density += share * goes_on**count * normal(MIDDLE_MS - count * mean, spread)
        share *= feed["missed_suck"]
    rest = normal(np.log(MIDDLE_MS / own["rest_ms"]), feed["rest_spread"]) / MIDDLE_MS
    density += np.where(MIDDLE_MS < REST_MS_LEAST, 0, rest / own["run_sucks"])
    shares = density * np.diff(ENDS_MS)
    return np.append(shares / shares.sum() * (1 - UNSEEN_SHARE), UNSEEN_SHARE)


def sights(feed):
    """The probability of each gap, first without and then with a swallow, by phase."""
    rows = []
    for own in feed["own"]:
        swallow = min((1 - feed["missed_swallow"]) / own["sucks_per_swallow"], 0.98)
        seen = gaps(own, feed)
        rows.append(np.concatenate([seen * (1 - swallow), seen * swallow]))
    return np.array(rows)


def changes(feed):
    """The probability of each phase after each, from one suck to the next."""
    # The time to the next suck, its share of a rest included.
    steps = [
        60_000 / own["sucks_per_min"] * (1 + feed["missed_suck"])
        + own["rest_ms"] * REST_MEAN / own["run_sucks"]
        for own in feed["own"]
    ]

    def leaves(step_ms, mean_ms):
        return 1 - math.exp(-step_ms / mean_ms) if mean_ms else 0.0

    # Quick sucks at the start and between flows are one state here.
    quick = leaves(steps[0], (feed["first_ms"] + feed["between_ms"]) / 2)
    tires = (feed["none"] + 1 - feed["again"]) / 2
    flow = leaves(steps[1], feed["flow_ms"])
    flutter = leaves(steps[2], feed["wakes_ms"])
    to_flutter = [
        quick * tires + leaves(steps[0], feed["flutter_ms"]),
        flow * feed["tires"] + leaves(steps[1], feed["flutter_ms"]),
    ]
    rows = np.array(
        [
            [0, quick * (1 - tires), to_flutter[0]],
            [flow * (1 - feed["tires"]), 0, to_flutter[1]],
            [flutter * (1 - feed["wakes_to_flow"]), flutter * feed["wakes_to_flow"], 0],
        ]
    )
    return rows + np.diag(1 - rows.sum(axis=1))


def informed(feed):
    """The most probable phase of each suck."""
    model = CategoricalHMM(3, init_params="", params="", n_features=2 * CLASSES)
    model.startprob_ = np.array([1.0, 0.0, 0.0])
    model.transmat_ = changes(feed)
    model.emissionprob_ = sights(feed)
    seen = []
    for gap_ms, swallow, _, _ in feed["sucks"]:
        if gap_ms is None:
            place = UNSEEN
        else:
            place = int(np.clip(np.searchsorted(ENDS_MS, gap_ms) - 1, 0, UNSEEN - 1))
        seen.append([place + CLASSES * swallow])
    return model.predict_proba(np.array(seen)).argmax(axis=1)


def main():
    only_print = "--only-print" in sys.argv
    [path] = [it for it in sys.argv[1:] if it != "--only-print"]
    wrong = defaultdict(lambda: np.zeros(3, dtype=int))
    with open(path, encoding="utf-8") as lines:
        for line in lines:
            feed = json.loads(line)
            count = wrong[feed["simulator"], feed["hand"]]
            if not feed["sucks"]:
                continue
            for guess, (_, _, truth, told) in zip(informed(feed), feed["sucks"]):
                if truth in PHASES:
                    count += [1, told != truth, PHASES[guess] != truth]
    high = 0
    for (simulator, hand), (sucks, told, by_model) in wrong.items():
        high += AT_MOST < wrong_sucks.ratio(f"{simulator}, {hand}", sucks, told, by_model)
    if not wrong:
        sys.exit("does not hold: feeds were given")
    if high and not only_print:
        sys.exit(f"does not hold: at most {AT_MOST} times the informed model's")


main()
