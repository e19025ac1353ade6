/* A text of the page with its open places filled: "%(n)s" by the value of that name. */

/** @param {string} text @param {Object<string, string | number>} values */
export function fillIn(text, values) {
  return text.replace(/%\((\w+)\)s/g, (_whole, name) => String(values[name]));
}
