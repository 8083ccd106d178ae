## Die Sperre: PIN und Notfallcode.

pin-title-open = Gesperrt
pin-how-open = Tippen Sie die PIN dieses Tablets ein. Ist sie vergessen, den Notfallcode.
pin-title-current = Die jetzige PIN
pin-how-current = Tippen Sie zuerst sie ein, oder den Notfallcode.
pin-title-new = Eine neue PIN
pin-how-new = Sechs bis zwölf Ziffern. Es ist die PIN dieses Tablets: Wer es benutzt, muss sie kennen.
pin-title-again = Die neue PIN noch einmal
pin-how-again = Tippen Sie dieselben Ziffern noch einmal.
pin-title-write = Notfallcode aufschreiben
pin-how-write = Mit ihm öffnet sich dieses Tablet, wenn die PIN vergessen ist. Schreiben Sie ihn jetzt auf und verwahren Sie ihn dort, wo die Station ihre Schlüssel hat. Er wird nicht noch einmal gezeigt. Ohne PIN und ohne diesen Code kann niemand lesen, was auf diesem Tablet ist.
pin-done-open = Öffnen
pin-done-next = Weiter
pin-done-set = Festlegen
pin-done-written = Ist aufgeschrieben
pin-digits = { $count ->
    [0] Keine Ziffer getippt
    [one] Eine Ziffer getippt
   *[other] { $count } Ziffern getippt
}
pin-busy = Einen Moment …
pin-length = Eine PIN hat sechs bis zwölf Ziffern, ein Notfallcode 30.
pin-easy = Das ist zu leicht zu erraten. Wählen Sie mindestens drei verschiedene Ziffern, die keine Folge sind.
pin-differs = Das waren andere Ziffern. Beginnen Sie noch einmal mit der neuen PIN.
pin-wrong = Damit öffnet es sich nicht.
pin-wait = Nächster Versuch in { $time }.
