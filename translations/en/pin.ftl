## The lock: the PIN, the rescue code.

pin-title-open = Locked
pin-how-open = Type the PIN of this tablet. If it is forgotten, type the rescue code.
pin-title-current = The PIN as it is now
pin-how-current = Type it first, or the rescue code.
pin-title-new = A new PIN
pin-how-new = Six to twelve digits. It is the PIN of this tablet: whoever uses it has to know it.
pin-title-again = The new PIN once more
pin-how-again = Type the same digits again.
pin-title-write = Write down the rescue code
pin-how-write = With it this tablet opens when the PIN is forgotten. Write it down now, and keep it where the ward keeps its keys. It is not shown again. Without the PIN and without this code nobody can read what is on this tablet.
pin-done-open = Open
pin-done-next = Go on
pin-done-set = Set
pin-done-written = It is written down
pin-digits = { $count ->
    [0] No digit typed
    [one] One digit typed
   *[other] { $count } digits typed
}
pin-busy = One moment …
pin-length = A PIN has six to twelve digits, a rescue code has 30.
pin-easy = That is too easily guessed. Choose at least three different digits that are no run.
pin-differs = Those were other digits. Begin again with the new PIN.
pin-wrong = That does not open it.
pin-wait = Try again in { $time }.
