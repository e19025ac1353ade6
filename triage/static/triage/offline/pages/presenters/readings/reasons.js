/* Why a figure cannot be used, as a sentence that says what to do: as
   `triage/check_pages/presenters/readings/reasons.py`. */

/** `words` are what was `typed`, the `low` and `high` that can be meant, and the field's `label`. */
export function reasonSentence(visit, reason, words) {
  switch (reason) {
    case "not-a-reading":
      return visit.say("These figures are too long or incomplete. Type them again, with fewer of them.");
    case "unknown-field":
      return visit.say("There is a figure here that this test does not know. Type the figures again.");
    case "twice":
      return visit.say("One figure is there twice. Type it once.");
    case "missing":
      return visit.say("This is still missing: %(label)s.", words);
    case "not-a-number":
      return visit.say("“%(typed)s” is not a number we can read. Write it in digits, such as 12.5.", words);
    case "two-ways":
      return visit.say(
        "“%(typed)s” can be read in two ways. Leave out the sign between thousands, such as 1200.",
        words,
      );
    case "too-small":
      return visit.say("This cannot be less than %(low)s. Check the number and its unit.", words);
    case "too-large":
      return visit.say("This cannot be more than %(high)s. Check the number and its unit.", words);
    case "not-whole":
      return visit.say("This is counted in whole numbers. Write it without a decimal part.");
    case "too-many":
      return visit.say("There are more readings than can be used. Keep up to 60 of them.");
    case "too-few":
      return visit.say("There are too few readings to tell anything. Take some more.");
    case "out-of-order":
      return visit.say(
        "Each time must be later than the one before it. Two readings have the same or an earlier time.",
      );
    case "backwards":
      return visit.say("The second figure is lower than the first. Look if the two were swapped.");
    case "one-way":
      return visit.say("Two ways of reading the meter are filled in. Keep one and empty the other.");
    default:
      return visit.say("These figures cannot be used together. Check them against your notes.");
  }
}
