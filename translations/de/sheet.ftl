### Das Blatt für die Mutter. Einfache Wörter, kurze Sätze: ein Test misst, wie leicht es sich liest. Kein Name.

sheet-title = Sie und Ihr Kind
# { $date } ein Datum, { $days } das Alter in ganzen Tagen.
sheet-day =
    { $days ->
        [0] Am { $date } sahen wir Ihnen beim Stillen zu. Ihr Kind war keinen Tag alt.
        [one] Am { $date } sahen wir Ihnen beim Stillen zu. Ihr Kind war einen Tag alt.
       *[other] Am { $date } sahen wir Ihnen beim Stillen zu. Ihr Kind war { $days } Tage alt.
    }
sheet-day-only = Am { $date } sahen wir Ihnen beim Stillen zu.

## Sofort ärztlich beurteilen: vor allem anderen.

sheet-review = Jetzt muss ein Arzt kommen
sheet-review-baby = Ein Arzt muss Ihr Kind jetzt sehen. Wenn noch keiner da war, fragen Sie noch einmal. Warten Sie nicht.
sheet-review-mother = Ein Arzt muss Sie jetzt sehen. Wenn noch keiner da war, fragen Sie noch einmal. Warten Sie nicht.

## Was gut zu sehen war.

sheet-well = Was gut ging
sheet-well-flow = Ihre Milch kam, und Ihr Kind hat geschluckt.
sheet-well-mouth = Ihr Kind nahm die Brust mit weit offenem Mund.
sheet-well-chin = Das Kinn lag an der Brust.
sheet-well-close = Sie hielten Ihr Kind nah bei sich.
sheet-well-pain = Am Ende tat es kaum oder gar nicht weh.
sheet-well-nipple = Die Brustwarze sah nach dem Stillen gut aus.
sheet-well-softer = Die Brust war nach dem Stillen weich.
sheet-well-content = Ihr Kind war nach dem Stillen ruhig.
sheet-well-together = Sie haben es zu zweit versucht. Sie beide lernen jedes Mal etwas dazu.

## Was vereinbart ist, für sie gesagt.

sheet-try = Was Sie tun können
sheet-plan-feed-often = Stillen Sie Ihr Kind, wenn es sich meldet, am Tag und in der Nacht.
sheet-plan-skin-to-skin = Halten Sie Ihr Kind viel auf der nackten Haut.
sheet-plan-wake-for-feeds = Wecken Sie Ihr Kind zurzeit zum Trinken.
sheet-plan-keep-hold = Bleiben Sie bei der Haltung, die heute gut war.
sheet-plan-work-on-attachment = Warten Sie, bis der Mund weit offen ist. Dann holen Sie Ihr Kind heran, das Kinn zuerst.
sheet-plan-compressions = Drücken Sie die Brust sanft, wenn Ihr Kind kaum noch saugt.
sheet-plan-both-breasts = Geben Sie jedes Mal beide Seiten.
sheet-plan-express-after-feeds = Gewinnen Sie nach dem Stillen noch Milch, mit der Hand oder mit der Pumpe.
sheet-plan-give-expressed-milk = Geben Sie diese Milch nach dem Stillen, so wie wir es gezeigt haben.
sheet-plan-weigh-again = Wir wiegen Ihr Kind noch einmal.
sheet-plan-count-nappies = Zählen Sie die nassen und die vollen Windeln.
sheet-plan-nipple-care = Pflegen Sie die Brustwarzen so, wie wir es gezeigt haben.
sheet-plan-watch-next-feed = Rufen Sie uns, wenn Sie das nächste Mal stillen.
sheet-plan-call-baby-doctor = Sagen Sie es uns sofort, wenn es schlechter wird. Dann sieht ein Arzt Ihr Kind an.
sheet-plan-call-mother-doctor = Sagen Sie es uns sofort, wenn es schlechter wird. Dann sieht ein Arzt nach Ihnen.
sheet-plan-call-midwife-in-charge = Sagen Sie es uns sofort, wenn es schlechter wird. Dann kommt die leitende Hebamme zu Ihnen.
sheet-plan-call-feeding-team = Sagen Sie es uns, wenn es schlechter wird. Dann hilft Ihnen das Team für das Stillen.
sheet-plan-medical-team-told = Wir haben einem Arzt Bescheid gesagt.

## Woran man sieht, dass Milch ankommt.

sheet-milk = So sehen Sie, dass Milch ankommt
sheet-milk-1 = Ihr Kind saugt erst schnell. Dann saugt es langsam und tief.
sheet-milk-2 = Sie hören oder sehen, wie Ihr Kind schluckt.
sheet-milk-3 = Es tut nicht mehr weh, wenn die ersten Züge vorbei sind.
sheet-milk-4 = Die Brust ist nach dem Stillen weich.
sheet-milk-5 = Ihr Kind lässt los und ist ruhig.

## Die nächsten Tage. Die Zahlen kommen aus den Tabellen zum Wachstum.

sheet-expect = Was jetzt kommt
sheet-weight-birth = Bei der Geburt wog Ihr Kind { $grams }.
sheet-weight-now = Am { $date } waren es { $grams }.
sheet-weight-usual = Fast alle Kinder nehmen erst etwas ab. Ab dem fünften Tag nehmen die meisten wieder zu. Nach drei Wochen wiegen die meisten so viel wie bei der Geburt.
sheet-nappies = An den Windeln sehen Sie, wie viel ankommt. So viele sollten es an einem Tag mit der Nacht sein.
sheet-nappies-later = Es sollten jetzt sechs oder mehr nasse Windeln an einem Tag mit der Nacht sein. Sie sollten schwer sein.
sheet-nappies-day = Tag
sheet-nappies-wet = Nass
sheet-nappies-dirty = Voll
sheet-nappies-colour = Farbe
sheet-nappies-least = { $count } oder mehr
sheet-nappies-heavy = { $count } oder mehr, schwer
sheet-colour-black = schwarz
sheet-colour-green = grün
sheet-colour-yellow = gelb

## Wann Hilfe nötig ist.

sheet-help = Holen Sie sofort Hilfe, am Tag und in der Nacht, wenn
sheet-help-how = Klingeln Sie auf der Station. Zu Hause rufen Sie die Nummer an, die Sie von uns haben. Wenn es um Leben und Tod geht, rufen Sie den Notruf an.
sheet-help-baby-1 = Ihr Kind kaum zu wecken oder ganz schlaff ist
sheet-help-baby-2 = Ihr Kind schnell oder schwer atmet oder dabei stöhnt
sheet-help-baby-3 = Ihr Kind blau, grau oder sehr blass ist
sheet-help-baby-4 = Ihr Kind nicht trinken will oder 8 Stunden keine nasse Windel hatte
sheet-help-baby-5 = Ihr Kind heiß oder kalt ist oder einen Krampf hat
sheet-help-baby-6 = Ihr Kind immer gelber wird oder der Stuhl weiß ist
sheet-help-baby-7 = Ihr Kind grün spuckt oder Blut in der Windel ist
sheet-help-mother-1 = Sie stark bluten oder Ihnen schwarz vor den Augen wird
sheet-help-mother-2 = Sie Fieber haben oder die Brust an einer Stelle heiß und rot ist und weh tut
sheet-help-mother-3 = der Kopf sehr weh tut oder Sie nicht gut sehen
sheet-help-mother-4 = die Brust innen oder eine Wade weh tut oder Sie kaum Luft bekommen
sheet-help-mother-5 = Sie daran denken, sich oder dem Kind etwas anzutun

## Das Ende.

sheet-next = Ihr nächster Termin
sheet-next-at = Wir kommen wieder: { $due }.
sheet-next-ask = Fragen Sie, wann wir wieder nach Ihnen sehen.
sheet-sources = Windeln: Merkblätter für Eltern aus Großbritannien, etwa der UNICEF UK Baby Friendly Initiative. Gewicht: Leitlinie NICE NG75 (2017). Ihre Station kann andere Zahlen haben. Dann gilt, was Ihre Station sagt.
sheet-foot = Dieses Blatt ersetzt nicht den Rat der Hebamme oder des Arztes. Besuch { $id }
