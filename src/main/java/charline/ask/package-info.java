/**
 * Questions as people put them, such as {@code what never cleared on oak last week}, read into a
 * {@link charline.log.search.Condition} with what else was asked: the newest few, the lowest dose,
 * how many.
 *
 * <p>A question is cut into words ({@link charline.ask.Splitting}); names of the log, numbers with
 * their units, times and the {@link charline.ask.Sense}s of plain words become pieces; and {@link
 * charline.ask.Clauses} joins the pieces by and, or and not.
 *
 * <p>This package must know nothing of how an answer is shown.
 *
 * <h2>Decisions</h2>
 *
 * <p>A grammar of our own, by hand. Rejected: a parser generator, since half of the words are the
 * log's own and what is left between the known ones is plain speech without an order; and guessing
 * at words that are not known, as a wrong answer costs wood.
 *
 * <p>A phrase with a meaning belongs into {@code Sense}, a name or unit of a number into {@code
 * AmountWords}, a time into {@code charline.ask.time}, plain speech that says nothing of patches
 * into {@code Filler}. What a patch can be asked for is a leaf of the condition, with its test in
 * {@code Search} and its words in {@code QuestionText}.
 *
 * <p>Whatever narrows a question is known or refused by name. Only words of a closed list that say
 * nothing about patches are passed over.
 */
package charline.ask;
