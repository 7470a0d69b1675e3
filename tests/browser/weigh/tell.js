([text, fragments]) => {
  const data = text ? JSON.parse(text) : WeighPage.data;
  const minor = (found) => found && [found.outcome, found.minor_units === undefined ? null : found.minor_units];
  const plain = (amount) => amount ? WeighNumbers.plain(amount) : null;
  return fragments.map((fragment) => {
    const read = WeighQuestion.read(data, fragment), asked = read.asked;
    const found = WeighRanking.rank(data, asked);
    if (found.missing) return { missing: found.missing };
    const m = found.market, digits = (d) => WeighNumbers.amountText(d, m.digits);
    const ladder = WeighLadder.ladder(data, asked, found), pick = found.pick;
    const change = pick && WeighSwap.swap(data, asked, pick.product);
    return {
      ignored: read.ignored, again: WeighQuestion.write(data, asked, true),
      order: found.order.map((row) => ({
        product: row.id, rank: row.rank, level: WeighOrder.levelWith(found.order, row).map((r) => r.id).sort(), count: row.level,
        unknown: WeighOrder.onlyByUnknown(found.order, row).map((r) => r.id).sort(), held: row.held_back,
        score: [row.score.low, row.score.expected, row.score.high],
        merits: found.criteria.map((c) => row.merits[c.name]),
        mode: row.outcome.mode, balance: row.outcome.balance, unchecked: row.unchecked,
        even: row === found.leader ? null : minor(row.break_even),
        at: row === found.leader ? "stands first" : WeighSaid.firstAt(row, m),
        why: row === found.leader ? "" : WeighOrder.behindWords(WeighOrder.differences(found, row, found.leader)) + ": " +
          WeighOrder.differenceWords(WeighOrder.differences(found, row, found.leader)),
      })),
      room: minor(found.room),
      out: Object.fromEntries(found.excluded.map((row) => [row.id, row.out.map((f) => f.because)])),
      inAt: Object.fromEntries(found.excluded.filter((row) => row.in_at).map((row) => [row.id, digits(row.in_at)])),
      ladder: ladder.missing ? null : ladder.list.map((s) => [s.id, s.status, WeighNumbers.number(s.saving.low),
        WeighNumbers.number(s.saving.expected), WeighNumbers.number(s.saving.high), digits(s.extra),
        s.each ? WeighLadder.perGram(s.each, m) : null, s.further ? WeighLadder.perGram(s.further, m) : null, s.by]),
      saddle: change ? (change.saddle.missing ? "missing" : [change.saddle.change, change.saddle.plus_minus]) : null,
    };
  });
}
