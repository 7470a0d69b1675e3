"use strict";
// Numbers as the catalog's own program rounds and prints them: halves away from zero, on the digits as written.
const WeighNumbers = (() => {
  // a decimal number is {n, s}: the whole number n, with its last s digits behind the point
  const decimal = (text) => {
    const found = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(String(text));
    if (!found) throw new Error("no decimal number");
    const fraction = found[3] || "";
    const n = BigInt(found[1] + found[2] + fraction);
    const s = fraction.length - Number(found[4] || 0);
    return s < 0 ? { n: n * 10n ** BigInt(-s), s: 0 } : { n, s };
  };
  const at = (a, s) => a.n * 10n ** BigInt(s - a.s);
  const add = (a, b) => {
    const s = Math.max(a.s, b.s);
    return { n: at(a, s) + at(b, s), s };
  };
  const minus = (a) => ({ n: -a.n, s: a.s });
  const subtract = (a, b) => add(a, minus(b));
  const times = (a, b) => ({ n: a.n * b.n, s: a.s + b.s });
  const compare = (a, b) => {
    const n = subtract(a, b).n;
    return n < 0n ? -1 : n > 0n ? 1 : 0;
  };
  const size = (n) => (n < 0n ? -n : n);
  const number = (a) => Number(plain(a));

  // the quotient a / b in steps of 10^-decimals, halves away from zero
  const divided = (a, b, decimals) => {
    const s = Math.max(a.s, b.s);
    const top = at(a, s) * 10n ** BigInt(decimals), below = at(b, s);
    const whole = (2n * size(top) + size(below)) / (2n * size(below));
    return { n: (top < 0n) === (below < 0n) ? whole : -whole, s: decimals };
  };
  const ONE = { n: 1n, s: 0 };
  const inSteps = (a, decimals) => divided(a, ONE, decimals);
  const ceiling = (a, b) => {
    const s = Math.max(a.s, b.s), top = at(a, s), below = at(b, s);
    const whole = top / below;
    return whole * below < top ? whole + 1n : whole;
  };

  const plain = (a) => {
    const digits = size(a.n).toString().padStart(a.s + 1, "0");
    const text = a.s > 0 ? digits.slice(0, -a.s) + "." + digits.slice(-a.s) : digits;
    return (a.n < 0n ? "-" : "") + text;
  };
  const short = (value) => {
    const text = plain(decimal(value));
    return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  };
  const signed = (a, sign) => (sign && a.n > 0n ? "+" : "") + plain(a);
  // most numbers lie far from a half and can be rounded as they are; null for those that need their digits
  const quickText = (value, decimals, sign) => {
    if (typeof value !== "number" || !(Math.abs(value) < 1e6)) return null;
    const steps = Math.abs(value) * 10 ** decimals, below = Math.floor(steps), rest = steps - below;
    if (Math.abs(rest - 0.5) < 1e-6) return null;
    const whole = rest > 0.5 ? below + 1 : below, digits = String(whole).padStart(decimals + 1, "0");
    const text = decimals ? digits.slice(0, -decimals) + "." + digits.slice(-decimals) : digits;
    return (whole === 0 ? "" : value < 0 ? "-" : sign ? "+" : "") + text;
  };
  const numberText = (value, decimals = 0, sign = false) => {
    const quick = quickText(value, decimals, sign);
    return quick === null ? signed(inSteps(decimal(value), decimals), sign) : quick;
  };
  const pointsText = (value, sign = false) => numberText(value, 1, sign);
  const DECIMALS = { g: 0, h: 0, W: 0, "%": 1, mm: 1, s: 1, points: 1 };
  const figureText = (value, unit) => {
    const text = numberText(value, unit in DECIMALS ? DECIMALS[unit] : Number.isInteger(value) ? 0 : 1);
    return (text + " " + (unit === "years" && text === "1" ? "year" : unit)).trim();
  };
  const halfMillimetres = (value, sign = false) => {
    const halves = inSteps(times(decimal(value), { n: 2n, s: 0 }), 0);
    return signed({ n: halves.n * 5n, s: 1 }, sign) + " mm";
  };

  // amounts are decimals in the currency's own unit
  const money = (minorUnits, digits) => ({ n: BigInt(minorUnits), s: digits });
  const amountText = (amount, digits) => plain(inSteps(amount, digits));
  const moneyText = (amount, market, sign = false) => {
    const [whole, rest] = signed(inSteps(amount, market.digits), sign).split(".");
    const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
    return market.currency + " " + grouped + (rest ? "." + rest : "");
  };

  // six significant digits, as short as may be
  const general = (value) => short(String(Number(Number(value).toPrecision(6))));

  const listed = (words, last = "and") =>
    words.length < 2 ? words.join("") : words.slice(0, -1).join(", ") + " " + last + " " + words[words.length - 1];
  const listedMost = (words, most = 5) =>
    listed(words.length > most + 1 ? [...words.slice(0, most), words.length - most + " more"] : words);
  const sentence = (text) =>
    text ? text[0].toUpperCase() + text.slice(1).replace(/\.+$/, "") + "." : "";
  const within = (title) => title.slice(0, 1).toLowerCase() + title.slice(1);

  return {
    decimal, add, subtract, times, compare, divided, ceiling, inSteps, number, plain, short, numberText, pointsText,
    figureText, halfMillimetres, money, amountText, moneyText, general, listed, listedMost, sentence, within,
  };
})();
