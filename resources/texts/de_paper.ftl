### Was neben den Wörtern von Werkbankblatt und Angebot gedruckt wird: Arten von Papier, Ofenblatt, Laufzettel, Belege, Zeichnungen.

sort-bench = Werkbankblatt
sort-kiln = Ofenblatt
sort-quote = Angebot
sort-slip = Laufzettel
sort-receipt = Metallbeleg
paper-title = { $sort }, { $batch }
paper-title-client = { $sort } für { $client }
paper-title-both = { $sort } für { $client }, { $batch }
sheet-none = Keine Küvette und kein Auftrag, also steht nichts auf der Werkbank.
sheet-drawing = Baum in der Küvette
drawing-caption = Im Schnitt, Maßstab
drawing-size = Ø { $diameter } × { $height }
drawing-collar = Kragen { $what }
drawing-no-flask = Noch in keiner Küvette
drawing-far-end = fernes Ende
drawing-button-end = Kegelseite
drawing-numbers = Nummern
drawing-key = { $place } Auftrag { $order } von { $client }
drawing-says = Schnitt der Küvette { $size } mit ihrem Baum, { $count ->
        [one] ein Stück
       *[other] { $count } Stücke
    } gezeichnet. Platz zur Wand { $wall }, Platz über dem Baum { $above }.
mix-in-all = Alle Mischungen
mix-in-all-of = { $powder } Pulver, { $water } Flüssigkeit
kiln-title = Ofenladung { $load }, { $kiln }
kiln-flasks = Küvetten im Ofen, in der Reihe des Gusses
kiln-no-flasks = In dieser Ladung ist noch keine Küvette.
kiln-readings = Was der Ofen zeigte
kiln-curve-says = Das Programm über der Uhr, von { $start } bis zum Guss { $pour }.
kiln-none = Keine Ofenladung, also kein Ofenblatt.
column-in = Drin
column-scratched = Stirn
column-flask = Küvette
column-position = Platz
column-invested-by = Eingebettet bis
column-mould = Form beim Guss
column-turn = Reihe
column-poured-at = Gegossen um
column-clock = Uhr
column-display = Anzeige
column-probe = Zweiter Fühler
column-remark = Luft, Rauch, Bemerkung
slip-title = Auftrag { $order } für { $client }
slip-taken = Angenommen
slip-due = Fällig
slip-lines = Was bestellt ist
slip-pieces = Stück für Stück
slip-made = Da
slip-cleaned = Rein
slip-on-tree = Baum
slip-cast = Guss
slip-cut = Ab
slip-weight = Gewicht
slip-finished = Fertig
slip-delivered = Weg
slip-remark = Zeile { $line }. { $words }
slip-code-why = Ein Code ist die Zeile und die Nummer des Stücks darin. Er bleibt beim Stück vom Druck bis zum Kunden.
slip-more = { $count ->
        [one] Ein weiteres Stück hat
       *[other] { $count } weitere Stücke haben
    } hier keine Reihe.
slip-foot = Bleibt bei den Stücken. Nennt einen Kunden und keinen Preis.
slip-none = Kein Auftrag, also kein Laufzettel.
column-line = Zeile
column-mark = Punze
column-set = Satz
column-finish = Ausarbeitung
column-code = Code
column-tree-flask = Baum, Küvette
tree-in-flask = { $tree }, in { $flask }
receipt-title = Beleg für Metall von { $client }
receipt-metal = Was hereinkam
receipt-fine = Feinmetall darin
receipt-fine-why = Feinmetall ist Gewicht mal Feingehalt. Was nicht geprüft wurde, gilt nach den Papieren, mit denen es kam, oder nach dem, was davon gesagt wurde.
receipt-terms = Was daraus wird
receipt-yours = Dieses Metall bleibt Ihres. Es wird unter eigenem Zettel gehalten und in Gramm Feinmetall abgerechnet.
receipt-apart = Mit anderem Metall wird es nur mit Ihrer schriftlichen Zustimmung geschmolzen.
receipt-weighed = Gewichte sind die der Waage der Werkstatt bei der Annahme. Steine, Lot und Schmutz, die sich später finden, werden gesagt und für sich gewogen.
receipt-brought = vom Kunden gebracht
receipt-not-assayed = seine Papiere, nicht geprüft
receipt-foot = Metall wird nach Gewicht angenommen. Diesen Beleg aufbewahren.
receipt-none = Es ist kein Metall eines Kunden im Haus, also kein Beleg.
column-on = Am
column-lot = Zettel
column-metal = Metall
column-paper = Papier
column-in-all = Gesamt
column-fineness = Feingehalt
column-by = Nach
column-fine = Feinmetall
sign-studio = Für die Werkstatt
sign-client = Kunde

## Ein Chargenplan

plan-pieces = { $count } × { $design } für { $client } ({ $numbers })
plan-flask-of-job = { $size }, Küvette { $name } dieser Charge
plan-column-flask = Küvette
plan-column-alloy = Legierung
plan-column-count = Stücke
plan-column-pieces = Welche
plan-column-metal = Metall
plan-column-crucible = Tiegel
plan-nothing = Jedes Stück hängt an einem Baum: Nichts ist offen.
plan-total = { $pieces ->
        [one] Ein Stück
       *[other] { $pieces } Stücke
    } in { $flasks ->
        [one] einer Küvette
       *[other] { $flasks } Küvetten
    }, { $volume } mit Einbettmasse zu füllen, Bäume und Kuppeln nicht abgezogen.
plan-proven = Bewiesen nach den Plätzen, die jedes Stück einnimmt: Kein Plan hat weniger Küvetten, und keiner mit so wenigen braucht weniger Einbettmasse.
plan-proven-flasks = Bewiesen nach den Plätzen, die jedes Stück einnimmt: Kein Plan hat weniger Küvetten. Einer mit so wenigen, der weniger Einbettmasse braucht, wurde nicht gefunden; weniger als { $volume } ist unmöglich.
plan-bound = Bewiesen nach den Plätzen, die jedes Stück einnimmt: Kein Plan hat weniger als { $flasks ->
        [one] eine Küvette
       *[other] { $flasks } Küvetten
    }. Ob es einen mit weniger als diesem gibt, blieb offen.
plan-stopped = Die Suche wurde angehalten. Das ist der beste Plan, der bis dahin gefunden wurde.
plan-arranged = Jeder Baum wurde mit seinen Stücken angeordnet, und alles hängt. Mit dem Bauen werden die Plätze eingetragen.
plan-not-arranged = Der Baum wurde nicht angeordnet: Wie alles hängt, ist noch zu finden.
plan-short = Platz fand sich für { $most } von { $of }. Sie aufteilen oder ihren Angusskanälen eine andere Länge geben.
plan-straighter = { $what }: Angusskanäle unter { $angle }, damit sie vom Hauptangusskanal frei bleiben.
plan-left-over = In keiner Küvette:
plan-left-no-alloy = { $what }: Der Auftrag nennt keine Legierung.
plan-left-alloy-gone = { $what }: Die Legierung { $alloy } steht nicht im Regal.
plan-left-no-pattern = { $what }: Kein Modell ist gewählt.
plan-left-being-read = { $what }: Die Datei des Modells wird noch gelesen.
plan-left-no-volume = { $what }: Das Modell hat weder ein Gewicht mit seinem Werkstoff noch eine Datei mit einem Volumen.
plan-left-no-size = { $what }: Nichts sagt, wie lang, breit und hoch das Modell ist.
plan-left-crucible = { $what }: { $crucible } darf { $alloy } nicht schmelzen. Einen anderen Tiegel wählen oder keinen.
plan-left-too-large = { $what }: braucht mit dem Platz darum eine Küvette von Ø { $wide } × { $high } innen. Die größte, die da ist, hat { $largest }.
plan-left-no-place = { $what }: findet am üblichen Baum keinen Platz, auch nicht in der größten Küvette, { $largest }. Ein längerer Angusskanal oder ein dünnerer Hauptangusskanal kann helfen.
plan-left-none-free = { $what }: Jede Küvette, die groß genug ist, ist in Gebrauch, oder die Werkstatt hat keine.
plan-left-metal = { $what }: braucht mit Angusskanälen { $metal } Metall. Eine Charge aus { $crucible } lässt in der besten Küvette { $most } für Stücke.
plan-left-too-many = { $what }: Diese { $count } sollen zusammenbleiben und nähmen { $share } des Baums in der Küvette { $size }, der geräumigsten für sie.
plan-left-moulds = { $what }: Sie sollen zusammenbleiben, aber manche wollen die Form bei { $least } oder heißer, andere bei { $most } oder kühler.
plan-left-kept = { $what }: Die Küvette, in der sie bleiben sollten, fasst sie nicht mehr. Sie freigeben und neu planen.
plan-left-kiln = { $what }: Der Ofen hat noch { $places ->
        [one] einen Platz
       *[other] { $places } Plätze
    }, und was früher fällig ist, braucht sie.
plan-left-no-room = { $what }: Neben { $flasks ->
        [one] der einen Küvette
       *[other] den { $flasks } Küvetten
    } dieses Plans ist keine frei, die sie fasst.
plan-with = Gerechnet mit
plan-with-crucible = { $alloy } aus { $crucible }: höchstens { $heaviest } für einen Baum mit Angusskanälen.
plan-with-no-crucible = { $alloy }: Kein Tiegel im Regal darf sie schmelzen, ihr Metall ist also keine Grenze.
plan-with-tree = Hauptangusskanal Ø { $main }, Angusskanäle der Stücke Ø { $width } × { $feed } unter { $angle }, Stücke { $gap } voneinander.
plan-with-own-flasks = Die Küvetten im Verzeichnis der Werkstatt, ohne die in Gebrauch.
plan-with-shelf = Jede Küvette des Regals, so viele wie nötig: Das Verzeichnis der Werkstatt nennt keine.
plan-with-kiln = { $kiln } hat { $places ->
        [one] einen Platz
       *[other] { $places } Plätze
    }, davon { $free } frei.
plan-with-no-kiln = Keine Grenze durch den Ofen.

# Was eine Küvette mit Löchern oder ein Kragen verlangt.
mix-wrap = Die Wand dieser Küvette hat Löcher: vor dem Füllen umwickeln, vor dem Ofen abwickeln. Beim Gießen liegt eine heile Dichtung unter ihrem Flansch.
mix-collar = Der Kragen von { $collar } bleibt, bis die Form abgebunden hat. Dann die Form bündig mit dem Rand abziehen.
mix-top-up = Bis zum Rand nachfüllen, solange der Schlicker fließt.
cut-log = { $count } Ablesungen über { $time }, von { $least } bis { $most }.
cut-log-from = Die erste { $at }.
cut-drop = Fiel zwischen { $from } und { $to } nach der ersten Ablesung von { $high } auf { $low } und stieg nicht wieder.
cut-drop-recovers = Fiel zwischen { $from } und { $to } nach der ersten Ablesung von { $high } auf { $low } und stieg dann wieder.
cut-band = { $least } bis { $most }
cut-says = Küvette { $flask }: { $answer }. { $why }
cut-not-fired = WEITER
cut-not-fired-why = Ihre kälteste Ecke war nie gebrannt; der Kern hat am Ende { $core }. Nicht schneller wieder heizen als von kalt.
cut-reheat = WIEDER HEIZEN
cut-reheat-why = Ihre kälteste Ecke blieb nach dem Brennen bei { $corner } oder darüber; der Kern hat am Ende { $core }. Langsam wieder heizen und die letzten Stufen ganz halten.
cut-marginal = FRAGLICH
cut-marginal-why = Ihre kälteste Ecke kam auf { $corner }, in die Umwandlung des Cristobalits oder nah daran; der Kern hat am Ende { $core }. Nur gießen, was verloren gehen darf, nichts Unersetzliches, niemand in der Nähe, und das Vakuum beim ersten Zeichen eines Lecks aus.
cut-scrap = VERLOREN
cut-scrap-why = Ihre kälteste Ecke kam nach dem Brennen auf { $corner }: Der Cristobalit hat sich zurückgewandelt, und die Form ist wohl gerissen. Nicht gießen. Abkühlen lassen, nass und mit Atemschutz ausbetten und neu beginnen.
work-printing = Drucken
work-washing = Waschen und härten
work-tree = Bäume
work-investing = Einbetten
work-setting = Abbinden
work-dewax = Dampf
work-loading = Ofen beladen
work-burnout = Ausbrennen
work-pour = Guss
work-why-hours = nicht für alles davon ist jemand da.
work-why-overlaps = es ist nicht fertig, wenn das Nächste beginnt.
work-why-short = das Folgende beginnt zu bald danach.
work-why-long = was daraus wurde, wartet länger, als es soll.
work-why-taken = eine andere Ladung dieses Auftrags hat dann den Ofen.
work-why-past = es müsste vor heute beginnen.
work-why-none = in den Wochen davor fand sich keine Zeit dafür.
work-title = Die Arbeit vor dem Guss
work-says = Rückwärts vom Guss { $pour }; was dazwischen stillsteht, soll es.
column-waits = Wartet dann
column-dry = Kern trocken
column-hot = Kern bei 700 °C und mehr
column-core = Kern beim Guss
column-cavity = Äußerster Hohlraum dann
column-out = Darf draußen stehen
moulds-title = In den Formen
moulds-computed = Berechnet, von niedriger bis hoher Leitfähigkeit: Eine eigene Küvette messen, um zu wissen, wo sie liegt. Wachs und Dampf bleiben außer Acht.
moulds-by-log = Nach dem Protokoll des Ofens berechnet, von niedriger bis hoher Leitfähigkeit. Wachs und Dampf bleiben außer Acht.
moulds-never = nie
moulds-longer = über 20 min
kiln-curve-core = Gestrichelt: der Kern der Küvette { $flask }, wie er wahrscheinlich ist.
keyed-title = In den Regler
keyed-set = eingeben
keyed-ramp = Rampe
keyed-hold = halten
keyed-true = am Fühler
keyed-hottest = heißeste Stelle
keyed-coldest = kälteste Stelle
keyed-full = volle Leistung
keyed-hours = { $hours } h { $minutes }
keyed-lowered = Stufe { $stage } liegt über der Grenze und wurde auf sie gesenkt.
keyed-no-full = Der Regler kennt kein Wort für so schnell er kann: Stufe { $stage } nimmt seine schnellste Rampe.
keyed-too-fast = Die Rampe der Stufe { $stage } ist schneller, als der Regler sie nimmt; hier steht seine schnellste.
keyed-too-slow = Die Rampe der Stufe { $stage } ist langsamer, als der Regler sie nimmt, und geht in Schritten.
keyed-same = Stufe { $stage } und die nächste haben eine Temperatur und sind eine Zeile.
keyed-long-hold = Stufe { $stage } hält länger, als der Regler es nimmt, und steht in mehreren Zeilen.
keyed-too-many = { $by ->
    [one] Eine Zeile mehr, als der Regler nimmt.
   *[other] { $by } Zeilen mehr, als der Regler nimmt.
    } Am wenigsten ändert sich, wenn aus diesen eine wird:
keyed-merge = Stufen { $first } und { $second }, dann bis zu { $off } neben dem Programm.
third-front-left = vorn links
third-front-middle = vorn in der Mitte
third-front-right = vorn rechts
third-middle-left = links, halb hinten
third-middle = in der Mitte
third-middle-right = rechts, halb hinten
third-back-left = hinten links
third-back-middle = hinten in der Mitte
third-back-right = hinten rechts

## Die Abrechnung über das Metall eines Kunden

sort-account = Metallkonto
account-title = Abrechnung über das Metall von { $client }
account-metal = Konto in { $metal }
account-castings = Güsse
account-back = Zurückgegeben
account-deposit = Feinmetall, das hereinkam
account-cast = In guten Güssen
account-returned = Zurückgegeben
account-loss = Vereinbarter Schwund
account-balance = Noch hier, fein
account-owed = Ein Saldo unter null ist Metall der Werkstatt, das über das Gebrachte hinaus vergossen wurde. Es wird in Gramm fein oder in Geld geschuldet, wie vereinbart.
account-why = Feinmetall ist Gewicht mal Feingehalt. Güsse und Angüsse tragen den Feingehalt ihrer Schmelze, nach den Papieren der Posten darin; nichts wurde geprüft, wenn keine Prüfung genannt ist.
account-batch = Diese Abrechnung gilt für eine Arbeit. Was andere Arbeiten aus denselben Posten vergossen, steht in deren.
account-flask = Güsse aus Küvette { $flask } zusammen
account-sprues = Angüsse und Gusskegel
account-lot = Posten { $lot }, wie er kam
account-foot = Gewichte sind die der Waage der Werkstatt.
account-none = Es ist kein Metall eines Kunden im Haus, also keine Abrechnung.

## Was in einer Sendung liegt

sort-parcel = Sendezettel
parcel-of = Sendezettel, { $to }
parcel-title = An { $to }: { $purpose }
parcel-pieces = Was darin liegt
parcel-trees = Gussbäume
parcel-not-weighed = nicht gewogen
parcel-sent = Gesandt am
parcel-carrier = Überbringer
parcel-promised = Zurück versprochen
parcel-weight = Gewicht zusammen
parcel-law = Nach Gesetz
parcel-law-heading = Was das Gesetz verlangt
parcel-no-law = In den Einstellungen ist kein Land gewählt, also wird nichts darüber gesagt, was das Gesetz verlangt.
parcel-law-source = { $country }. { $notes }Quelle: { $source }. Gesetze ändern sich, und dies ist kein Rat: das Prüfamt weiß es.
parcel-exempt = Kein Stempel nötig
parcel-legal = Feingehalte, die verkauft werden dürfen
parcel-none-exempt = jedes Stück braucht einen
parcel-up-to = bis { $weight }
parcel-below = unter { $weight }
parcel-order = Reihenfolge der Arbeit (übliche Praxis, ohne Quelle)
parcel-step-shape = Erst abschneiden, löten und in Form feilen: eine Prüfung schabt die Oberfläche, und was später gefügt wird, wurde nicht geprüft.
parcel-step-weigh = Jedes Stück wiegen, wie es geht, und das Gewicht auf diesen Zettel schreiben.
parcel-step-mark = Stempeln lassen, ehe Steine, Überzug und letzte Politur kommen: der Schlag verletzt, was rundherum liegt.
parcel-step-set = Den Stempel von hinten richten, dann fassen, überziehen, polieren.
parcel-step-later = Metall, das nach dem Stempel durch Größenänderung oder Reparatur dazukommt, muss vielleicht neu geprüft werden. Das Amt fragen.
parcel-back = Was zurückkam
parcel-back-on = Zurück am
parcel-failed = Dort durchgefallen
parcel-none-failed = keines
parcel-photos = Bilder: { $photos }
parcel-handed-over = Übergeben
parcel-received = Angenommen
parcel-foot = Vor dem Unterschreiben zählen und wiegen.
parcel-none = Es wurde nichts aus dem Haus gesandt, also kein Sendezettel.
mark-needed = nötig
mark-exempt = befreit
mark-not-weighed = erst wiegen
mark-nothing = –
out-hallmark = Stempelung
out-setting = Fassen
out-sizing = Größenänderung
out-repair = Reparatur
out-plating = Überziehen
out-casting = Guss außer Haus
out-other = anderes
