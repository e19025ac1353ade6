/* The reference of a call: four random letters and a fifth that checks them, said in the spelling words of ICAO
   (Annex 10, Volume II). The fifth is the sum of each letter's number times an odd factor, modulo 26: any one letter
   misheard shows, and nearly every two that were swapped. */

// biome-ignore format: a table
export const SPELLING = [
  "Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo", "Lima", "Mike",
  "November", "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor", "Whiskey", "X-ray", "Yankee",
  "Zulu",
];
const FIRST = "A".charCodeAt(0);
const FACTORS = [3, 5, 7, 9];

/** @param {string} four */
function checkLetter(four) {
  const sum = FACTORS.reduce((total, factor, at) => total + factor * (four.charCodeAt(at) - FIRST), 0);
  return String.fromCharCode(FIRST + (sum % 26));
}

export function newReference() {
  const four = String.fromCharCode(...[...crypto.getRandomValues(new Uint32Array(4))].map((n) => FIRST + (n % 26)));
  return four + checkLetter(four);
}

/** @param {string} reference */
export function spelled(reference) {
  return [...reference].map((letter) => SPELLING[letter.charCodeAt(0) - FIRST]).join(" ");
}

/** Letters or spelling words as typed: the reference and whether its letters check out, or null where it is none.
 * @param {string} text */
export function parseReference(text) {
  if (/\d/.test(text)) return null; // a job sheet's, which the server reads
  const words = text
    .toUpperCase()
    .replace(/X[\s-]*RAY/g, "XRAY")
    .split(/[^A-Z]+/)
    .filter(Boolean);
  const letters = words.length === 5 ? words.map((word) => word[0]).join("") : words.join("");
  if (!/^[A-Z]{5}$/.test(letters)) return null;
  return { reference: letters, isValid: checkLetter(letters) === letters[4] };
}
