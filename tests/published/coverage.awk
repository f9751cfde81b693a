# The foot of the page about coverage, from coverage.tsv; evidence.awk calls it.
function coverage_table(    line, cell, header, word, n) {
  print ""
  print "## How often 95 % intervals hold the truth"
  print ""
  print "`tests/coverage` flies marram's short card 400 times in each of 12 cells, four airs by three pilots, with standard instruments"
  print "whose errors are drawn anew for each sortie, and holds every set point against the truth. Steady records are reduced three times,"
  print "whole, to their first half and to their first quarter, so that the windows are nested and the flight is the same. *Interval* is"
  print "Clopper and Pearson's of the share covered, 95 %; **within** where it meets 93 to 97 %, **wide** where it lies above (the stated"
  print "uncertainty is too large), **narrow** where it lies below (too small). The checks fly the first two sorties of each cell again,"
  print "and one cell whole, and compare hashes."
  print ""
  if ((getline line < coverage) <= 0) {
    print "Not flown yet: run `tests/coverage`."
    return
  }
  print "What an interval takes for granted, and where it is not so:"
  print ""
  print "- The record is steady and on condition, and what moves in it more slowly than it lasts shows in the scatter of its 3 s means,"
  print "  times 1.4. Fewer than three such means show nothing and the reduction then leaves that part out: windows under 9 s (*window*)."
  print "- The 1.4 was matched to light air, to gusts of one time scale that do not change over the window. Rougher air and thermals"
  print "  differ (*air*)."
  print "- Ratio is nearly a straight line in lift area over the record, so that the correction to the target takes out speed error, load"
  print "  factor and most of a gust. Large swings near the stall bend it (*air*)."
  print "- The scatter about that line tells its own autocorrelation, which wants a window of ten correlation times, and adds to the"
  print "  instruments' errors as independent parts; these are drawn as the budget states them."
  print "- A stall is no steady record: one entry stands for all, the lag of lift behind angle is taken as 0.4 s, and the greatest lift as"
  print "  the vertex of a parabola (*stall*)."
  print ""
  print "Where all of it *holds*, the share is held above (JCGM-100)."
  print ""
  print "| air | pilot | set point | window, s | found | covered | share | interval | rms error, kt | half-width, kt | ground | verdict |"
  print "| --- | --- | --- | ---: | ---: | ---: | ---: | --- | ---: | ---: | --- | --- |"
  do {
    if (line ~ /^#/ || line ~ /^cell\t/) continue
    split(line, cell, "\t")
    word = coverage_word(cell[7], cell[10], cell[11])
    n[cell[14], word]++
    n[cell[14]]++
    print "| " cell[2] " | " cell[3] " | " cell[4] " | " cell[5] " | " cell[7] " | " cell[8] " | " cell[9] " | " cell[10] " to " cell[11] \
      " | " cell[12] " | " cell[13] " | " cell[14] " | " (word == "within" ? word : "**" word "**") " |"
  } while ((getline line < coverage) > 0)
  print ""
  print "| ground | rows | within | wide | narrow |"
  print "| --- | ---: | ---: | ---: | ---: |"
  coverage_sum("holds", n)
  coverage_sum("window", n)
  coverage_sum("air", n)
  coverage_sum("stall", n)
}
function coverage_word(found, lower, upper) {
  if (found + 0 == 0) return "none found"
  return upper + 0 < 0.93 ? "narrow" : lower + 0 > 0.97 ? "wide" : "within"
}
function coverage_sum(ground, n) {
  print "| " ground " | " n[ground] + 0 " | " n[ground, "within"] + 0 " | " n[ground, "wide"] + 0 " | " n[ground, "narrow"] + 0 " |"
}
