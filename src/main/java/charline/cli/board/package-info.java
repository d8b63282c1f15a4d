/** Commands about boards: the wood that patches are burned on. */
package charline.cli.board;
