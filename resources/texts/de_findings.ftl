### Befunde auf Deutsch: erst die Folge, dann was zu tun ist.

finding-tree-too-wide = Der Baum ist { $tree } breit und die Küvette innen { $flask }, bleiben { $clearance } zur Wand. Er stößt an oder passt nicht hinein, und dort liefe Metall aus. Eine weitere Küvette nehmen oder den Baum stutzen.
finding-wall-clearance = Nur { $clearance } Einbettmasse zur Wand, diese Modelle brauchen { $needed }. Die Form kann dort reißen und Metall auslaufen. Eine weitere Küvette nehmen oder die Stücke einrücken.
finding-tree-too-high = Der Baum ist { $tree } hoch und die Küvette { $flask }, bleiben { $clearance } darüber. Er steht aus der Form heraus. Eine höhere Küvette, einen Kragen oder einen kürzeren Baum nehmen.
finding-top-clearance = Nur { $clearance } Einbettmasse über dem fernen Ende des Baums, wo { $needed } das Metall halten. Sie kann ausgeblasen werden, wenn das Metall ankommt. Eine höhere Küvette, einen Kragen oder einen kürzeren Baum nehmen.
finding-base-does-not-fit = { $base } schließt keine Küvette von Ø{ $flask } mm. Brei läuft aus. Den Sockel nehmen, der zu dieser Küvette gehört.
finding-ratio-outside = Das Verhältnis { $ratio } liegt außerhalb dessen, was dieses Pulver verträgt, { $low } bis { $high }. Zu dünn, und die Form ist schwach und treibt Grate, zu dick, und Blasen bleiben. Innerhalb mischen.
finding-several-mixes = Der Brei steigt im Vakuum und geht nicht auf einmal in eine Schüssel von { $bowl }. { $mixes }-mal mischen und nur nachgießen, solange die letzte Mischung noch flüssig ist.
finding-mix-outruns = Bis zum Ende des letzten Vakuums dauert es { $clock }, und die Küvette muss bei { $finish } stillstehen. Später bewegt, reißt die abbindende Form und treibt Grate. Einen Schritt kürzen.
finding-check-overdue = { $what } sollte am { $on } geprüft werden. Die Anzeige kann falsch sein.
finding-powder-old = Pulverposten { $lot } war gut bis { $until }. Altes Pulver bindet schnell und schwach. Einen frischen Posten öffnen oder erst eine kleine Mischung versuchen.
finding-crucible-full = { $molten } geschmolzenes Metall ist zu viel für { $crucible }, der { $usable } fasst. Es liefe über. Einen größeren Tiegel nehmen oder die Schmelze teilen.
finding-crucible-wrong = { $crucible } ist nicht für { $alloy }. Er hält die Hitze nicht aus oder dient einer anderen Metallfamilie. Er kann voll versagen oder die Legierung verderben. Einen anderen Tiegel nehmen.
finding-crucible-low = { $molten } ist wenig Metall für { $crucible }, der { $usable } fasst. Beim Schleudern kann ein Teil zurückbleiben. Einen kleineren Tiegel nehmen.
finding-button-over-funnel = Der Gusskegel von { $button } ist mehr, als der Trichter fasst, { $funnel }. Metall stünde über den Rand und liefe an der Küvette herab. Einen kleineren Kegel verlangen oder einen Sockel mit größerem Trichter nehmen.
finding-over-ceiling = Die heißeste Stelle im Ofen erreicht { $top }, und { $powder } darf nie mehr als { $ceiling } sehen. Die Form zerfällt, und Gips gibt Schwefelgas ab. Das Programm senken.
finding-over-planned = Das Programm geht bis { $top }. Für { $powder } nicht mehr als { $ceiling } planen: heißere Formen geben dunkle, raue Güsse. Die höchste Stufe senken.
finding-stones-too-hot = In dieser Form sind Steine, und der Ofen erreicht { $top }, wo sie { $ceiling } ertragen. Sie werden trüb oder springen. Das Programm senken. Dafür kann niemand unterschreiben.
finding-stones-powder = Steine werden in { $powder } mitgegossen, das nicht dafür gemacht ist. Sie verbrennen. Ein Pulver für Steine nehmen. Dafür kann niemand unterschreiben.
finding-stones-no-quench = Steine werden mitgegossen. Abgeschreckt springen sie. Diese Küvette an der Luft handwarm werden lassen.
finding-mould-refuses = { $alloy } darf nicht in { $powder } gegossen werden: die Form zerfällt unter dem Metall. Ein Pulver nehmen, das seine Hitze aushält. Dafür kann niemand unterschreiben.
finding-kiln-cannot-follow = Das Programm verlangt diese Rampe in { $asked }, und der Ofen braucht { $needed }. Die Zeiten hier sind die des Ofens. So früh beginnen, wie sie sagen.
finding-kiln-ceiling = Das Programm geht bis { $target } und { $kiln } bis { $ceiling }. Er käme nie dorthin oder fiele aus. Die Stufe senken oder einen anderen Ofen nehmen.
finding-kiln-segments = Das Programm hat { $segments } Stufen, und der Regler nimmt { $most }. Die letzten liefen nicht. Stufen zusammenlegen, oder sie von Hand setzen und dabeibleiben.
finding-kiln-full = { $flasks ->
        [one] Eine Küvette ist
       *[other] { $flasks } Küvetten sind
    } in dieser Ladung, und der Ofen hat { $places ->
        [one] einen Platz
       *[other] { $places } Plätze
    }. Gedrängte Küvetten brennen ungleich aus. Einige in eine andere Ladung stellen.
finding-ramps-unsaid = Die Tafel sagt nicht, ob ihre Stunden die Rampen enthalten. Wenn ja, dauert das Programm { $with }, wenn nicht, { $without }. Geplant ist das längere. Ins Datenblatt sehen und sagen, welches gilt.
finding-stage-too-short = Der Ofen braucht { $ramp } dorthin, und die Stufe hat { $stage }. Zum Halten bleibt nichts, darum ist die Stufe hier verlängert. Die Stunden der Tafel prüfen.
finding-table-too-small = { $table } hat keine Zeile für eine Küvette von Ø{ $flask } mm. Ihre letzte gilt und kann zu kurz sein. Ein Programm für diese Größe nehmen.
finding-table-not-meant = { $table } ist nicht gemeint für { $for }. Kohlenstoff kann bleiben oder die Form reißen. Eine Tafel nehmen, die dafür gemacht ist.
finding-carbon-left = { $time } bei 700 °C und darüber, und { $material } braucht { $needed }. Kohlenstoff in der Form gibt Poren und Gas. Die höchste Stufe länger halten, mit frischer Luft.
finding-mould-wet = Nach der Wärme in der Form hält der Kern dieser Küvette beim Guss noch Wasser ({ $core }). Wasser unter flüssigem Metall schleudert es heraus. Länger halten und nicht gießen, ehe der Kern trocken war.
finding-mould-wet-perhaps = Leitet die Form so schlecht, wie sie kann, hält ihr Kern beim Guss noch Wasser ({ $core }). Länger halten, ehe sie heiß wird, oder messen.
finding-core-carbon-left = Der Ofen ist lange genug heiß, der Kern nicht: { $time } bei 700 °C und darüber, und { $material } braucht { $needed }. Die höchste Stufe länger halten, mit frischer Luft.
finding-core-carbon-perhaps = Leitet die Form so schlecht, wie sie kann, hat ihr Kern { $time } bei 700 °C und darüber, und { $material } braucht { $needed }. Länger zu halten ist die sichere Seite.
finding-core-not-held = Der Kern hat beim Guss { $core }, und die Form wird mit { $wanted } gebraucht. Die letzte Stufe länger halten.
finding-core-not-held-perhaps = Leitet die Form so schlecht, wie sie kann, hat ihr Kern beim Guss { $core }, und sie wird mit { $wanted } gebraucht.
finding-fast-burnout = { $table }: Der Ofen ist heiß, wenn nasse Küvetten hineingehen. Nur mit einer Einbettmasse, deren Datenblatt es erlaubt, das Wachs vorher mit Dampf ausgeschmolzen oder trocken geladen, wie jenes Blatt sagt, unter einem Abzug, der zieht, mit Gesichtsschutz, langen Ärmeln und langer Zange, und von Händen, die es schon getan haben. Dampf und brennendes Wachs treten sofort aus: neben der Öffnung stehen. Erst eine Probeküvette gießen.
finding-fast-mix-thin = Diese Küvette ist mit { $mixed } angemischt und geht in einen heißen Ofen; so ein Programm verträgt { $thick }. Eine dünnere Mischung hält mehr Wasser, und der Dampf kann sie sprengen. Dicker anmischen oder langsam ausbrennen.
finding-kiln-unvented = { $kiln } hat keinen Abzug. Rauch und Kohlenmonoxid gehen in den Raum, und Kohlenstoff in den Formen findet keine Luft zum Verbrennen. Ins Freie entlüften, wie es am Ort vorgeschrieben ist, mit einem Melder für Kohlenmonoxid, ehe er angezündet wird.
finding-steam-not-meant = Dampf nimmt { $material } nicht aus der Form und kann es erweichen oder quellen lassen, bis die Form reißt. Trocken ausbrennen, wie sein Datenblatt sagt.
finding-wax-left = { $out } von { $wax } Wachs kamen mit dem Dampf heraus. Etwas hält den Rest zurück, und er wird im Ofen kochen und brennen: in die Öffnung sehen, noch einmal dampfen und langsam heizen.
finding-turn-against-heat = Diese Küvette soll vor { $flask } gegossen werden und wird kühler gebraucht ({ $wanted }): Ihre Form wäre zu heiß, oder die andere bis dahin zu kalt. Die heißesten Formen zuerst gießen.
finding-mould-fell = Nach dem Protokoll des Ofens fiel die Ecke dieser gebrannten Form auf { $corner }: Der Cristobalit hat sich zurückgewandelt, und die Form ist gerissen, sichtbar oder nicht. Metall liefe heraus. Nicht gießen.
finding-mould-fell-near = Nach dem Protokoll des Ofens kann die Ecke dieser gebrannten Form auf { $corner } gefallen sein, wo Cristobalit sich zurückwandelt. Bei gutem Licht nach Rissen sehen und nur hinter einem Schild, in Sand gestellt, gießen, oder gar nicht.
finding-log-over-ceiling = Nach seinem Protokoll hatte der Ofen { $top }, und { $powder } darf nie heißer werden als { $ceiling }: Gips zerfällt, gibt Schwefelgas ab, und die Form ist schwach. Den Raum lüften und nicht gießen.
finding-work-does-not-fit = { $step }: { $why } Den Guss oder diesen Schritt auf eine andere Zeit legen.
finding-starts-in-past = Um wie geplant zu gießen, hätte diese Ladung am { $start } beginnen müssen. Verkürzt reißt die Form oder behält Kohlenstoff. Später gießen.
finding-late = { $design } für { $client } ist am { $due } fällig, bevor die Küvette gegossen wird. Früher gießen, oder es dem Kunden jetzt sagen.
finding-pieces-on-no-tree = { $pieces ->
        [one] Ein Stück von { $design } für { $client } hängt an keinem Baum und würde nicht gegossen. Anhängen oder in eine andere Charge nehmen.
       *[other] { $pieces } Stücke von { $design } für { $client } hängen an keinem Baum und würden nicht gegossen. Anhängen oder in eine andere Charge nehmen.
    }
finding-piece-taken-twice = { $design }, Stück { $piece } des Auftrags, aus dem es kommt, hat auch { $jobs } übernommen. Es würde doppelt gegossen. Hier oder dort streichen.
finding-piece-twice = { $design } hängt an mehr als einem Baum, { $pieces } zu viel. Metall ist doppelt geplant. Von einem Baum nehmen.
finding-tree-in-no-flask = Baum { $tree } steht in keiner Küvette und würde nicht gegossen. Ihm eine Küvette geben oder ihn für eine andere Charge aufheben.
finding-two-alloys = { $first } und { $second } hängen an einem Baum, und nur eine kann gegossen werden. Jeder Legierung einen eigenen Baum geben. Dafür kann niemand unterschreiben.
finding-melt-two-alloys = Diese Schmelze geht in Küvetten von { $first } und von { $second }. Jeder Legierung eine eigene Schmelze geben. Dafür kann niemand unterschreiben.
finding-mould-ranges-apart = Die Küvetten dieser Ladung haben keine gemeinsame Formtemperatur. Eine will { $hottest } oder mehr, eine andere { $coolest } oder weniger. Die heißeste zuerst gießen und den Ofen für die anderen fallen lassen.
finding-metal-outside = Das Metall soll mit { $metal } gegossen werden, außerhalb von { $low } bis { $high } für diese Legierung und diesen Querschnitt. Zu kalt läuft es nicht aus, zu heiß nimmt es Gas auf. Innerhalb wählen, oder aufschreiben, warum nicht.
finding-mould-outside = Die Form soll { $mould } haben, außerhalb von { $low } bis { $high } für diese Legierung und diesen Querschnitt. Zu kalt läuft es nicht aus, zu heiß wird das Metall porös. Innerhalb wählen, oder aufschreiben, warum nicht.
finding-pattern-unknown = { $pattern } hat weder Gewicht noch Datei, darum ist sein Metall nicht bekannt. Eines wiegen oder die Datei angeben.
finding-line-without-pattern = { $design } für { $client } hat kein Modell, darum ist sein Metall nicht bekannt. Eines wählen.
finding-line-without-alloy = { $design } für { $client } hat keine Legierung, darum ist sein Metall nicht bekannt. Eine wählen.
finding-file-missing = { $kept ->
        [0] { $file } ist nicht da und sagt nichts über sein Modell. Zurücklegen, neu wählen oder das Modell wiegen.
       *[other] { $file } ist nicht da. Was früher daran gemessen wurde, gilt weiter. Zurücklegen oder neu wählen.
    }
finding-file-unreadable = { $kept ->
        [0] { $file } lässt sich nicht lesen ({ $reason }). Dort neu sichern, wo es gezeichnet wurde, oder das Modell wiegen.
       *[other] { $file } lässt sich nicht lesen ({ $reason }). Was früher daran gemessen wurde, gilt weiter. Dort neu sichern, wo es gezeichnet wurde.
    }
finding-file-apart = { $kept ->
        [0] { $file } liegt außerhalb des Ordners der Charge, wird ohne Erlaubnis nicht gelesen und sagt nichts über sein Modell. Den Ordner erlauben oder die Datei neben die Charge kopieren.
       *[other] { $file } liegt außerhalb des Ordners der Charge und wird ohne Erlaubnis nicht gelesen. Was früher daran gemessen wurde, gilt weiter. Den Ordner erlauben oder die Datei neben die Charge kopieren.
    }
finding-file-changed = { $kept ->
        [0] { $file } ist nicht die Datei, die angesehen wurde, und was jene maß, wurde nicht behalten. Diese füllt { $now }. Vor dem Anbieten noch einmal ansehen.
       *[other] { $file } ist nicht die Datei, die gemessen wurde. Jene füllte { $before } und gilt weiter; diese füllt { $now }. Ansehen und dann nehmen, wie sie jetzt ist, oder die alte zurücklegen.
    }
finding-file-open = { $file } ist an { $edges ->
        [one] einer Kante
       *[other] { $edges } Kanten
    } offen und hat kein Volumen. Dort schließen, wo es gezeichnet wurde, oder das Modell wiegen.
finding-file-mixed = Die Flächen von { $file } zeigen in beide Richtungen, darum hat es kein Volumen. Dort richten, wo es gezeichnet wurde, oder das Modell wiegen.
finding-sealed-void = { $file } hat einen geschlossenen Hohlraum von { $void }. Keine Einbettmasse kommt hinein, darum wird er voll gegossen. Die Waage zeigt ihn nicht: ein hohler Druck wiegt, was eine hohle Datei sagt. Für einen Hohlguss Löcher öffnen und den Kern halten.
finding-drained-void = { $file } hat einen Hohlraum von { $void }, der offen und gehalten sein soll. Schließt sich ein Loch oder wandert der Kern, wird er voll gegossen, und das Metall reicht nicht. In jedes Stück hineinsehen.
finding-shells-united = Schalen von { $file } überlappen. Zusammen füllen sie { $union }, und damit wird gerechnet; Schale für Schale zusammengezählt wären es { $sum }, also { $over } zu viel. Ein Programm, das nur zusammenzählt, wird das so angeben.
finding-shells-overlap = Schalen von { $file } überlappen. Das kann doppelt gezählt sein, darum ist die Einwaage eher zu hoch und ein Angebot auch. Die Schalen dort verbinden, wo es gezeichnet wurde, oder das Modell wiegen.
finding-file-unit = { $file } wäre { $size } lang. Es ist wohl in einer anderen Einheit gezeichnet ({ $unit }). Sagen, in welcher, bevor etwas eingewogen wird.
no-volume = kein Volumen
unit-millimetres = Millimeter
unit-centimetres = Zentimeter
unit-inches = Zoll
unit-metres = Meter
unit-mils = tausendstel Zoll
unit-micrometres = tausendstel Millimeter
finding-wall-too-thin = { $pattern } hat Wände von { $thinnest }, unter den { $least }, die diese Werkstatt ohne Sorge gießt. Dünne Wände füllen sich vielleicht nicht. Dort verstärken, wo es gezeichnet wurde, oder heißere Form und nahen Zulauf planen.
finding-file-remark = Zu { $file }, { $remark }
finding-weight-against-file = { $pattern } wiegt { $weighed }, und seine Datei sagt { $computed }. Es kann unausgehärtet, falsch vergrößert oder noch auf seinen Stützen sein. Eines prüfen, bevor es an einen Baum geht.
finding-size-off-scale = Größe { $size } steht nicht auf { $scale } ({ $range }), darum ist kein Innen-Ø bekannt. Größe oder Skala berichtigen.
finding-price-stale = Der Preis von { $metal } ist { $days ->
        [2147483647] ohne Datum ({ $on })
        [one] einen Tag alt, vom { $on }
       *[other] { $days } Tage alt, vom { $on }
    }. Angebote danach können Geld verlieren. Den heutigen Preis eintragen.
finding-price-missing = Kein Preis von { $metal } ist aufgeschrieben, darum hat nichts daraus einen Preis. Einen mit Datum eintragen.
finding-gross-without-tare = { $weight } wurde mit etwas darunter gewogen, dessen Tara niemand aufschrieb, darum nützt das Gewicht nichts. Den Sockel allein wiegen und als Tara eintragen.
finding-not-on-shelf = { $entry } ist nicht im Regal, darum ist nichts bekannt, was es braucht. Anderes wählen oder ins eigene Regal stellen.
finding-entry-other-kind = { $entry } ist gewählt, wo etwas anderes hingehört, darum ist nichts bekannt, was es braucht. Neu wählen.
finding-shelf-differs = { $entry } hat sich im Regal geändert, seit diese Charge es nahm. Sie behält ihre Abschrift. Vergleichen, dann behalten oder übernehmen.
finding-overlay-problem = Der eigene Regaleintrag { $entry } will angesehen werden. { $problem }
finding-charge-short = { $drawn } sind entnommen, und die Einwaage ist { $charge }. Die Küvette liefe nicht voll. Mehr Metall entnehmen.
finding-under-mark = Die Einwaage kommt auf { $fineness }, unter der Punze von { $mark }. Die Stücke könnten nicht gepunzt werden. Feineres Metall zugeben. Dafür kann niemand unterschreiben.
finding-lot-unknown = Die Werkstatt hat keinen Metallposten { $lot }, darum ist nicht bekannt, was er bringt. Den Zettel berichtigen oder den Posten eintragen.
finding-client-metal = Posten { $lot } gehört { $client }, und keine schriftliche Zustimmung zum Mischen ist vermerkt. Schriftlich einholen oder einen anderen Posten nehmen.
finding-lot-other-metal = Posten { $lot } ist { $alloy }, nicht die Legierung dieser Schmelze. Farbe, Hitze und Punze änderten sich. Einen anderen Posten nehmen oder sicher sein, dass es gemeint ist.
finding-irreplaceable = { $pattern } lässt sich nicht noch einmal machen und teilt diese Küvette mit anderen. Ein schlechter Nachbar verliert es. Ihm eine eigene Küvette geben.
finding-defaults = { $count ->
        [one] Eine Vorgabe zu { $page }, die niemand bestätigt hat, ist
       *[other] { $count } Vorgaben zu { $page }, die niemand bestätigt hat, sind
    } in Gebrauch ({ $which }). { $count ->
        [one] Sie
       *[other] Sie alle
    } einmal durchsehen.
finding-unfinished = Hier ist noch zu wählen, { $what }. Jede Zahl, die das braucht, bleibt bis dahin offen.
finding-melt-feeds-nothing = Aus dieser Schmelze wird keine Küvette gegossen. Für eine Küvette wählen oder weglassen.
finding-load-empty = In dieser Ofenladung steht keine Küvette. Eine hineinstellen oder die Ladung weglassen.
finding-scratch-twice = Zwei Küvetten tragen { $scratch } auf der Stirn. Aus dem Ofen kann sie niemand unterscheiden. Einer eine andere Nummer geben.
finding-part-not-weighed = { $material } hängt an diesem Baum und wurde nicht gewogen, darum fehlt sein Metall in der Einwaage. Auch wiegen, jedes Material für sich.
finding-ramp-said-twice = Diese Rampe soll { $minutes } dauern, und nach ihrer Geschwindigkeit wären es { $by-rate }. Die Minuten gelten. Eines von beiden behalten.
finding-pour-skipped = Die Uhren gehen über die Zeit des Gusses vor, darum zeigt keine Uhr sie. { $taken } gilt. Eine Zeit wählen, die die Uhr zeigt.
finding-pour-shown-twice = Die Uhren gehen über die Zeit des Gusses zurück, darum kommt sie zweimal. Die erste, { $taken }, gilt. Eine Zeit wählen, die einmal kommt.
finding-file-outside = { $file } liegt außerhalb des Ordners der Charge und reist nicht mit ihr. Daneben kopieren und dort wählen.
finding-acceptance-unknown = Jemand steht hier ein für „{ $finding }“, und einen solchen Befund gibt es nicht. Den Namen berichtigen oder es herausnehmen.
finding-lot-fineness-unknown = Niemand weiß, wie fein Posten { $lot } ist, darum ist nicht sicher, dass die Schmelze ihre Punze erreicht. Metall und Feingehalt aus seinen Papieren eintragen oder einen anderen Posten nehmen. Dafür kann niemand unterschreiben.
finding-mark-over-alloy = Eine Punze von { $mark } ist verlangt, und { $alloy } hält weniger. Das Stück könnte sie nicht tragen. Eine feinere Legierung oder eine niedrigere Punze wählen. Dafür kann niemand unterschreiben.
finding-lot-refining = Posten { $lot } ist für die Scheideanstalt. Feilung und Gekrätz tragen Schmutz, Stahl und Lot in den Guss. Einen sauberen Posten nehmen.
finding-returns-over = { $share } dieser Einwaage sind Rücklauf, und die Legierung verträgt { $limit }. Wieder geschmolzenes Metall nimmt Gas auf und verliert, was es gesund hält. Neumetall zugeben.
finding-rework-under-mark = Stück { $piece } hält als Ganzes seit der Reparatur { $fineness } und trägt den Stempel { $mark }. Prüfämter sehen Lot nach eigenen Regeln an. Vor dem Verkauf oder neuem Stempeln dort fragen.
finding-soldered-to-clean = Stück { $piece } wurde gelötet und ist Ausschuss, und Altmetall dieser Arbeit liegt in Posten { $lot }, der sauber gehalten wird. Lot verdirbt jeden Guss daraus. Prüfen, dass das Stück nicht darin ist, oder den Posten als gelötet führen.
finding-unmarked = { $count ->
    [one] Ein fertiges Stück von { $design } ging
   *[other] { $count } fertige Stücke von { $design } gingen
} ohne Stempel hinaus. { $country } verlangt einen, ehe etwas als Edelmetall verkauft wird. Das Prüfamt fragen.
finding-mark-not-legal = { $country } kennt den Feingehalt { $mark } nicht. Mit diesem Stempel darf dort nichts als Edelmetall verkauft werden. Das Prüfamt fragen.
finding-lot-short = Diese Arbeit entnimmt { $drawn } aus Posten { $lot }, und { $received } kamen je herein. Den Posten wiegen und Entnahme oder Beleg berichtigen.
finding-parts-touch = { $one } und { $other } oder ihre Angusskanäle berühren sich, so wie sie hängen, und würden zusammengegossen. { $more ->
    [0] Drehen oder eines anderswo aufhängen.
    [one] Noch eine Stelle ist zu nah. Drehen oder eines anderswo aufhängen.
   *[other] Noch { $more } Stellen sind zu nah. Drehen oder eines anderswo aufhängen.
}
finding-parts-near = Nur { $room } zwischen { $one } und { $other } oder ihren Angusskanälen, üblich sind { $needed }. Die Form dazwischen kann brechen und das Metall sie verbinden. { $more ->
    [0] Weiter auseinander hängen.
    [one] Noch eine Stelle ist zu nah. Weiter auseinander hängen.
   *[other] Noch { $more } Stellen sind zu nah. Weiter auseinander hängen.
}
finding-piece-near-trunk = Nur { $room } zwischen { $piece } und dem Hauptanguss, üblich sind { $needed }. Es kann am Hauptanguss angegossen werden. { $more ->
    [0] Einen längeren Angusskanal nehmen oder das Stück drehen.
    [one] Noch ein Stück ist zu nah. Einen längeren Angusskanal nehmen oder das Stück drehen.
   *[other] Noch { $more } Stücke sind zu nah. Einen längeren Angusskanal nehmen oder das Stück drehen.
}
finding-tree-against-parts = Der Baum auf der Waage ergibt { $weighed }, seine Modelle, Angusskanäle und Schweißstellen { $computed }: { $share } Unterschied. Ist die Tara des Sockels abgezogen, steht jedes Stück auf der Liste, und stimmen die Materialien?
finding-tree-in-two-flasks = Baum { $tree } steht in zwei Küvetten, darum sind sein Metall und seine Mischung doppelt geplant. Aus einer herausnehmen.
finding-copy-altered = Die Abschrift von { $entry } in dieser Arbeit wurde geändert, seit sie aus dem Regal kam. Ihre Zahlen sind nicht die der genannten Quelle. Die des Regals nehmen oder einen eigenen Eintrag ins Regal stellen.
finding-shells-nested = Ein Körper von { $inner } liegt ganz in einem anderen in { $file } und ist einmal gezählt. Ist er Material im Material, oder war ein Hohlraum gemeint, dessen Fläche falsch herum zeigt? Bei der Datei des Modells sagen; bis dahin zählt er als voll.
finding-walls-not-measured = { $file } hat so viele Dreiecke, dass ihre Wände nicht unter den Zahlen stehen. Das Modell auf seiner Seite wählen, dann werden sie dort gemessen.
finding-pair-same-side = { $one } und { $other } sollten links und rechts sein, und ihre Dateien haben dieselbe Form: beide wären für eine Seite. Eine von beiden dort spiegeln, wo sie gezeichnet wurde.
finding-pair-mirrored = { $one } und { $other } sollten gleich sein, und ihre Dateien sind Spiegelbilder. Eine Datei zweimal drucken oder sagen, dass sie links und rechts sind.
finding-pair-differs = Die Dateien von { $one } und { $other } liegen bis zu { $apart } auseinander, so gut sie sich aufeinander legen lassen; ein Paar darf um { $tolerance } abweichen. Eine ist vielleicht eine andere Fassung, eine andere Größe oder in einer anderen Einheit gezeichnet.
finding-pair-weights = { $one } wiegt { $weight } und { $other }, das Gegenstück, { $other-weight }. Das spürt, wer sie trägt, und eines von beiden ist vielleicht unausgehärtet, hohl oder noch auf seinen Stützen. Beide prüfen.
finding-powder-lot-unknown = Pulverposten { $lot } steht nicht als dieses Pulver im Verzeichnis, darum ist sein eigener Glanzverlust nicht bekannt und der des Regals gilt. Den Posten eintragen oder den Zettel berichtigen.
finding-tree-over-flask = Der Baum nimmt { $tree } ein und das Innere der Küvette nur { $flask }, für eine Form ist kein Platz. Gewichte und Größen prüfen oder eine größere Küvette nehmen. Dafür kann niemand unterschreiben.
finding-solidus-uncertain = Wo { $alloy } zu schmelzen beginnt, ist nur auf { $by } genau bekannt. Eine Probeküvette gießen und aufschreiben, was ging.
finding-irreplaceable-beside-trial = { $pattern } lässt sich nicht noch einmal machen, und diese Küvette ist ein Versuch: noch weiß niemand, wie er ausgeht. In eine Küvette geben, an der alles bekannt ist.
finding-mould-unknown = Die Werkstatt hat keine Gummiform { $mould }, darum sind Schüsse, Wachs und Schwindung von { $pattern } nicht bekannt. Die Nummer berichtigen oder die Form eintragen.
finding-shot-light = Ein Schuss wiegt { $shot } und { $pattern } allein { $weight }. Die Schüsse werden zu kurz, oder das Wachs ist zu knapp gerechnet. Einen ganzen Schuss wiegen, mit seinem Anguss.
finding-sample-light = Die Probe von { $material } ist zu leicht: { $density } ± { $within }. Um so viel kann auch der Einsatz falsch sein. Einen Block von 10 g oder mehr wiegen, ausgehärtet und trocken.
finding-density-off-shelf = { $material } kam im Wasser auf { $weighed }, und im Regal steht { $shelf }. Jedes Metallgewicht folgt daraus. Die gewogene Dichte nehmen oder noch einmal wiegen.
finding-own-limit = Die Werkstatt hat ihre eigene Grenze für { $entry } über die mitgelieferte gehoben. Befunde hier gehen nach der der Werkstatt.
finding-accepted = { $hands } steht dafür ein, { $on }. { $reason }

# Drucke und Kalibrierungen von Druckern.
finding-printer-unknown = In der Datei der Werkstatt gibt es keinen Drucker { $printer }. Schichten, Zeit und Platten sind nicht bekannt. Ihn zu den Druckern nehmen oder den Namen berichtigen.
finding-print-no-setting = { $printer } hat keine Einstellung für { $material }. Schichten und Zeit sind nicht bekannt. Schichtdicke und Belichtung aufschreiben.
finding-print-too-tall = { $pattern } ist { $height } hoch, der Drucker fasst { $room }. Der Druck endete ohne sein oberes Ende. Das Teil drehen, teilen oder einen anderen Drucker nehmen.
finding-print-over-plate = { $pattern } braucht { $x } mal { $y } und liegt auf keiner Platte von { $plate-x } mal { $plate-y }. Am Rand würde es abgeschnitten. Aufstellen oder einen größeren Drucker nehmen.
finding-print-washed-long = { $washed } gewaschen, dieses Harz verträgt { $most } im Lösemittel. Dünne Wände wie { $pattern } quellen und werden weich, sie werden größer oder krumm. Lange trocknen lassen, nachmessen und das nächste Mal kürzer waschen.
finding-print-cured-short = Vor dem Spülen { $cured } gehärtet, mindestens { $least } Ultraviolettlicht sind nötig. Weiche Haut geht beim Spülen ab, und was nicht aushärtet, greift die Form an. Nachhärten.
finding-print-not-clean = Die Oberfläche ist nach dem Spülen nicht sauber. Unausgehärtetes Harz darauf greift die Form an und gibt raue Güsse. Wieder härten und spülen, bis sie sauber ist.
finding-print-uncalibrated = Keine angenommene Kalibrierung von { $printer } mit { $material }. Drucke werden so groß, wie der Drucker sie macht. Ein paar gedruckte Längen messen und annehmen.
finding-recheck-due = Die Kalibrierung von { $printer } ist am { $due } nachzumessen.
finding-recheck-passed = Die Kalibrierung von { $printer } war am { $due } nachzumessen. Lampe und Folie altern, und Ringe kommen in anderer Größe heraus. Die Längen neu drucken und messen.
