"""Feeds of a simulator that knows nothing of the program: a chain of phases, a mean time in each.

Where it stands on published figures, they are named; the rest is common practice. Times in seconds.
Phases are 0 quick, 1 flow, 2 flutter, and 3 for the end of the feed.
"""

import numpy as np

PHASES = ["quick", "flow", "flutter"]
# Sucks a second: 107 and 90 a minute (Hartmann and others 2011); flutter is quicker (Drewett and
# Woolridge 1979, from memory).
RATE = np.array([107, 90, 112]) / 60
# Sucks a swallow: 6.7 and 2.5 (Hartmann and others 2011).
SUCKS_PER_SWALLOW = np.array([6.7, 2.5, 8.0])
# Sucks a run: about 10 (Martens and others 2020), more in flow and fewer at the end.
RUN_SUCKS = np.array([10, 22, 5])
# Means; 8.6 from Martens and others 2020, shorter before.
REST_S = np.array([5, 4, 8.6])
# The first flow after 56 s (Kent and others 2003, from memory), flows within 45 to 210 s (Gardner and
# others 2015), and the sleepy end.
PHASE_S = np.array([56, 120, 150])
# A phase passes in so many stages: its length is gamma of this shape.
STAGES = 3
# Where a phase leads: so that there are 2.5 flows a feed (Ramsay and others 2004).
LEADS = np.array([[0, 0.85, 0.10, 0.05], [0.50, 0, 0.40, 0.10], [0, 0.25, 0, 0.75]])
# Spreads of gaps and rests about their means, relative.
GAP_SPREAD = np.array([0.15, 0.12, 0.20])
REST_SPREAD = 0.6
# How babies differ, in all phases alike and in each: spreads of logarithms.
RATE_DIFFERS, RATIO_DIFFERS, OTHERS_DIFFER, PHASE_DIFFERS = (0.15, 0.07), (0.3, 0.2), (0.2, 0.2), 0.25
# A feed takes 4 to 40 minutes.
FEED_S = (240, 2_400)
# Hands: jitter, missed sucks, missed swallows, doubled taps; the last come so much later.
HANDS = [(0.03, 0, 0.05, 0), (0.04, 0.05, 0.1, 0.003), (0.05, 0.1, 0.15, 0.006), (0.06, 0.15, 0.2, 0.01)]
DOUBLED_S = (0.08, 0.18)


def log_spread(spread):
    return np.sqrt(np.log(1 + spread * spread))


def departs(chance, spread, count=None):
    """Draws about one: lognormal, of mean one."""
    return np.exp(chance.normal(-spread * spread / 2, spread, count))


def of_baby(chance, means, spreads):
    return means * departs(chance, spreads[0]) * departs(chance, spreads[1], 3)


class Baby:
    """A baby's own numbers, by phase."""

    def __init__(self, chance):
        self.rate = of_baby(chance, RATE, RATE_DIFFERS)
        ratio = 1 + of_baby(chance, SUCKS_PER_SWALLOW - 1, RATIO_DIFFERS)
        self.sucks_per_swallow = np.maximum(ratio, 1.2)
        self.run_sucks = np.maximum(of_baby(chance, RUN_SUCKS, OTHERS_DIFFER), 2.5)
        self.rest_s = np.maximum(of_baby(chance, REST_S, OTHERS_DIFFER), 2.5)
        self.phase_s = PHASE_S * departs(chance, PHASE_DIFFERS, 3)


def sucks(chance, baby):
    """Sucks as time, phase and whether there was a swallow, and whether the feed ended in time."""
    done = []
    now, phase = 1 + chance.exponential(2), 0
    left = chance.gamma(STAGES, baby.phase_s[phase] / STAGES)
    while now < FEED_S[1]:
        done.append((now, phase, chance.random() < 1 / baby.sucks_per_swallow[phase]))
        if chance.random() < 1 / baby.run_sucks[phase]:
            gap = baby.rest_s[phase] * departs(chance, log_spread(REST_SPREAD))
        else:
            gap = departs(chance, log_spread(GAP_SPREAD[phase])) / baby.rate[phase]
        now, left = now + gap, left - gap
        if left <= 0:
            phase = chance.choice(4, p=LEADS[phase])
            if phase == 3:
                break
            left = chance.gamma(STAGES, baby.phase_s[phase] / STAGES)
    return done, FEED_S[0] <= now < FEED_S[1]


def tapped(chance, done, hand):
    """Taps as milliseconds, word and the true phase; None where it is not to be judged."""
    jitter, no_suck, no_swallow, doubled = hand
    taps = []
    for time, phase, swallow in done:
        suck, swallow = chance.random() >= no_suck, swallow and chance.random() >= no_swallow
        if not (suck or swallow):
            continue
        what = "suck_swallow" if suck and swallow else "suck" if suck else "swallow"
        at = max(time + chance.normal(0, jitter), 0.01)
        taps.append([round(1_000 * at), what, phase if suck else None])
        if chance.random() < doubled:
            taps.append([round(1_000 * (at + chance.uniform(*DOUBLED_S))), what, None])
    taps.sort(key=lambda it: it[0])
    for before, after in zip(taps, taps[1:]):
        after[0] = max(after[0], before[0] + 1)
    return taps


def feed(seed, hand):
    """A baby and its taps."""
    chance = np.random.default_rng(seed)
    while True:
        baby = Baby(chance)
        done, within = sucks(chance, baby)
        if within:
            return baby, tapped(chance, done, hand)
