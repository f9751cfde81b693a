# Lines of evidence, tab-separated and sorted by source, into a page.
BEGIN {
  print "# What the model is held against"
  print ""
  print "Made by `tests/evidence` from the checks themselves; nothing here was typed. *Measured* is what this program gives,"
  print "*published* what the source says, *within* how near they must be (the check fails otherwise; \"not held\" is shown, with the"
  print "reason). How a number is known: read in the source, read in a copy, worked by hand, or from memory."
  print "Sources are described in [references.md](references.md)."
}
$1 != key {
  key = $1
  print ""
  print "## " key
  print ""
  print "| quantity | where | measured | published | within | unit | ratio | known | remark |"
  print "| --- | --- | ---: | ---: | ---: | --- | ---: | --- | --- |"
}
{ print "| " $3 " | " $2 " | " $4 " | " $5 " | " $6 " | " $7 " | " $8 " | " $9 " | " $10 " |"; count++; if ($6 != "not held") held++ }
END {
  print ""
  print "In all " count " values, " held " of them held."
}
