## The shaded view of a pattern.

part-how = Drag to turn, drag with Shift to move, double click to see it all; once it was clicked the wheel zooms. By keys: arrows turn, with Shift they move, + and - zoom, 0 shows it all, 1 to 7 are the sides, C cuts, X Y Z say across what, Page up and Page down move the cut, R turns it round, Space picks the middle.
part-how-short = Drag to turn, with Shift to move; after a click the wheel zooms. C cuts, 0 shows it all.
part-front = Front
part-back = Back
part-left = Left
part-right = Right
part-top = Top
part-bottom = Bottom
part-corner = Corner
part-fit = See it all
part-cut = Cut
part-cut-x = across x
part-cut-y = across y
part-cut-z = across z
part-cut-round = Other half
part-cut-back = Cut back
part-cut-on = Cut on
part-cut-at = cut at { $axis } = { $place }
