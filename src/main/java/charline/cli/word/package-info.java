/** Commands about the vocabulary: woods and coating families, and words that people add. */
package charline.cli.word;
