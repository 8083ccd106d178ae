## Der Bildschirm am Bett. Tasten sind schmal: höchstens zwei kurze Wörter.

bedside-suck = Saugen
bedside-suck-swallow = Saugen + Schlucken
bedside-looked-away = Weggeschaut
bedside-watching-again = Beobachte wieder
bedside-swallow-only = Nur Schlucken
bedside-take-back = Zurücknehmen
bedside-other-breast = Andere Brust
bedside-came-off = Brust losgelassen
bedside-back-on = Wieder an der Brust
bedside-change-hold = Haltung wechseln
bedside-try-change = Etwas ändern
bedside-end-feed = Mahlzeit beenden
bedside-page-position = Haltung
bedside-page-attachment = Anlegen
bedside-page-pain = Schmerz, mehr
bedside-tried-early = zu früh
bedside-tried-ready = Vergleich
bedside-compare-before = vorher
bedside-compare-after = nachher
bedside-state-seen = gesehen
bedside-state-unclear = unklar
bedside-state-not-seen = nicht gesehen
bedside-pain-now = Schmerz jetzt
bedside-pain-cannot-say = kann es nicht sagen
bedside-pain-early = Schmerz jetzt: Ist der Anfangsschmerz weg?
bedside-now = jetzt
bedside-place = { $side } · { $hold }
bedside-safe = { $count ->
    [one] { $count } Eintrag sicher
   *[other] { $count } Einträge sicher
}
bedside-saving = { $safe } von { $count ->
    [one] { $count } Eintrag sicher
   *[other] { $count } Einträgen sicher
}
bedside-phase-for = seit { $time }, { $sure }
bedside-sure = recht sicher
bedside-fairly-sure = ziemlich sicher
bedside-unsure = unsicher
bedside-sucks-a-minute = Züge je Minute
bedside-sucks-a-swallow = Züge je Schluck
bedside-in-this-run = in dieser Saugserie
bedside-resting = Pause
bedside-waiting = Warte auf Saugen
bedside-question-silent = Kein Tippen seit { $seconds } s. Pause, oder weggeschaut?
bedside-question-resting = Pause
bedside-question-away = Weggeschaut
bedside-hold-title = Welche Haltung jetzt?
bedside-adjustment-title = Was wird versucht?
bedside-end-title = Wer hat die Mahlzeit beendet?
bedside-strip = Die letzten zwei Minuten: { $sucks } Saugzüge, { $swallows } Schlucke
# Touches that the screen could not tell apart, in the top line.
bedside-unresolved = { $count ->
        [one] 1 Berührung unklar
       *[other] { $count } Berührungen unklar
    }
# Before and after something that was tried.
bedside-compare-heading = { $what }, bei { $time }
bedside-compare-early = Zu früh: erst { $seconds } von { $least } beobachteten Sekunden.
bedside-compare-spans = Beobachtet: { $before } vorher, { $after } nachher. Ein Unterschied wird nur genannt, wo sich die Intervalle nicht überschneiden.
bedside-compare-pain = Schmerz
bedside-compare-rate = Züge je Minute
bedside-compare-ratio = Züge je Schluck
bedside-compare-interval = { $value } ({ $low } bis { $high })
bedside-compare-none = nicht gefragt
bedside-compare-few = zu wenige
bedside-compare-lower = niedriger
bedside-compare-higher = höher
bedside-compare-not-clear = kein klarer Unterschied
bedside-compare-same = gleich
bedside-compare-changed = geändert
bedside-sign-help = { $look }
    { $try }
