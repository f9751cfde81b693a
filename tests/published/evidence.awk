# Lines of evidence, tab-separated and sorted by source, into a page; breaks, breaks_found and coverage name the files of its foot.
# coverage.awk goes with it.
BEGIN {
  print "# What the model is held against"
  print ""
  print "Made by `tests/evidence` from the checks themselves; nothing here was typed. *Measured* is what this program gives,"
  print "*published* what the source says, *within* how near they must be (the check fails otherwise; \"not held\" is shown, with the"
  print "reason). \"A sense\" is held too: the source says which way, without a number, and the bound shown as \"below\", \"above\" or"
  print "\"from to\" is ours. Of tables with many rows the worst row stands for all. How a number is known: read in the source, read in a"
  print "copy, worked by hand, or from memory."
  print "Sources are described in [references.md](references.md). At the foot: how often intervals"
  print "hold the truth; and equations broken one at a time, and what turned red. Stall manners are drawn as curves under"
  print "[CFR14-60](#cfr14-60)."
  # Drawn by the same run; a stale one is told like a stale page.
  above["CFR14-60"] = "![Lift, drag, moment slopes and grip of the controls of three aeroplanes, from 8 deg below the stall to 10 deg beyond it](stall_curves.svg)\n\n" \
    "The values below are taken at single angles, the curves through each half degree. Where the outer wing lets go, a slope is a\n" \
    "jump over its step, and may be larger between the points than any drawn.\n"
}
$1 != key {
  key = $1
  print ""
  print "## " key
  print ""
  if (key in above) print above[key]
  print "| quantity | where | measured | published | within | unit | ratio | known | remark |"
  print "| --- | --- | ---: | ---: | ---: | --- | ---: | --- | --- |"
}
{ print "| " $3 " | " $2 " | " $4 " | " $5 " | " $6 " | " $7 " | " $8 " | " $9 " | " $10 " |"; count++; if ($6 != "not held") held++ }
END {
  print ""
  print "In all " count " values, " held " of them held."
  coverage_table()
  foot()
}
# Rows in the order of the list; one that tests/breaks has not run yet says so.
function foot(    line, cells, header, results, not_reached, named) {
  while ((getline line < breaks_found) > 0) {
    split(line, cells, "\t")
    if (line !~ /^#/) results[cells[1]] = line
  }
  print ""
  print "## Equations broken one at a time"
  print ""
  print "`tests/breaks` makes each of these edits in a copy of the source and runs the checks of this page: how many values turn red,"
  print "how many a check that stopped short did not come to, how many test cases fail, and the first three red values."
  print ""
  print "| equation broken | in | red | not reached | test cases | first of them |"
  print "| --- | --- | ---: | ---: | ---: | --- |"
  while ((getline line < breaks) > 0) {
    if (line ~ /^#/ || header++ == 0 && line ~ /^name\t/) continue
    split(line, cells, "\t")
    named = "| " cells[5] " | `" cells[2] "` | "
    if (cells[1] in results) {
      split(results[cells[1]], cells, "\t")
      print named cells[6] " | " cells[7] " | " cells[8] " | " cells[9] " |"
    } else {
      print named "not run | | | |"
    }
  }
}
