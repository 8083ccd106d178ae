## Seen on every screen.

frame-back = Back
frame-close = Close
# The banner that leads back to a running feed. { $bed } as "Bay 2 · Bed 4".
frame-running = A feed is running: { $bed }. Touch to go back to it.
# The banner that stays until it is acknowledged. { $what } is the first finding, { $more } how many others.
frame-review =
    { $more ->
        [0] Medical review now, { $bed }: { $what }. Touch to read and acknowledge.
       *[other] Medical review now, { $bed }: { $what }, and { $more } more. Touch to read and acknowledge.
    }
# The same where there is room for little.
frame-review-short =
    { $more ->
        [0] { $bed } · Medical review now: { $what }
       *[other] { $bed } · Medical review now: { $what }, and { $more } more
    }
frame-no = No
frame-yes = Yes
frame-not-asked = not asked
frame-not-known = not known
# The line under every judgement.
frame-caution = Feedside records, counts and computes. It does not diagnose. Local policy and the clinician decide.
frame-set-aside = A new, empty file is in use now. Tell whoever looks after this device to keep the old one; type the desk's key and let the desk scan this tablet's key once more.
