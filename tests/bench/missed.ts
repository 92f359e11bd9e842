// Why targets are missed, and what was tried: told under the table of a section in which one is.

export const MISSED: Readonly<Record<string, string>> = {
  small:
    'Optimum: most of what is missed are seasons in which brews have to stay out, or nearly: which one it is and who feeds ' +
    'whom would have to change in one move. Tried: more and shorter coolings (ten instead of four: 28 of 32 runs of 6 brews ' +
    'at the optimum instead of 26, no more of 9 and 12), and letting brews be left out for a price while it is hot (21 to 28 ' +
    'of 32, and fewer of 9). Proof: with all days fixed the bound settles a few per cent below the plan, and branching on days ' +
    'then has nothing to cut; branching on who feeds whom is not built (decision 053).',
  search:
    'Distance to the best known: seeds end in different valleys; what was tried stands in decision 054, and the book has ' +
    'better plans than before to be measured against. Bound: what it loses is the days (with days fixed it lies within 6 % at ' +
    '12 brews) and, beyond 12, who feeds whom; what was tried stands in decision 053. Why the tight season of 60 costs more ' +
    'than 0.30 of the date order was not looked into.',
  scheduling:
    'Of the 40 brews half of the cases lie within 0.04 %; a few lie far above and make the mean, and which exchange they lack ' +
    'was not found out. Tried: shifts three times as often, closing up more and less (decision 054).',
  yeast:
    'No move re-matches all brews of a strain at once, which is what a fewest cover by paths is; single and paired changes of ' +
    'source stop short of it from 20 brews on. A matching per strain as a move of its own is not built.',
};
