/* A number as people type it, kept in the digits it was typed in: as `triage/check_pages/typed_number.py`. */

/** What Python takes for a space. */
export const SPACE = "[\\t-\\r\\x1c- \\x85\\xa0\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f\\u205f\\u3000]";

const BESIDE = new RegExp(`${SPACE}|[£€$']`, "g");
const TYPED_NUMBER = /^-?[0-9]{1,9}([.,][0-9]{1,6})?$/;
const TWO_WAYS = /^-?[1-9][0-9]{0,2}[.,][0-9]{3}$/;

/** The number meant, from `low` to `high`, or why it cannot be used; `text` is not empty.
 * @param {string} text @param {number} low @param {number} high @returns {{number?: string, reason: string}} */
export function readNumber(text, low, high) {
  const plain = text.replace(BESIDE, "");
  if (!TYPED_NUMBER.test(plain)) return { reason: "not-a-number" };
  if (TWO_WAYS.test(plain)) return { reason: "two-ways" };
  const number = plain.replace(",", ".").replace(/^(-?)0+(?=[0-9])/, "$1");
  const reason = Number(number) < low ? "too-small" : Number(number) > high ? "too-large" : "";
  return { number, reason };
}
