"""Says how many sucks the rhythm and an informed pass have in a wrong phase."""


def ratio(name, sucks, by_rhythm, by_informed):
    """Prints both shares, and gives how many times as many the rhythm has."""
    times = by_rhythm / max(by_informed, 1)
    print(
        f"{name}: {100 * by_rhythm / sucks:.1f} % of {sucks} sucks in a wrong phase, "
        f"informed {100 * by_informed / sucks:.1f} %, ratio {times:.2f}"
    )
    return times
