/** What the program refuses, in one sentence that the user can act on. Depends on nothing. */
package charline.refusal;
