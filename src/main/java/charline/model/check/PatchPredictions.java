package charline.model.check;

import charline.model.Draw;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Every patch gone through again under every draw, each given the others of its board. */
final class PatchPredictions {
  private final double[][] logLikelihood;
  private final double[][][] unseen;

  /** By draw, then the readings of all patches one after the other, as they are counted. */
  private final double[][] hazard;

  /** Where those of each patch begin; at the end, how many there are. */
  private final int[] firstReading;

  private final double[][] boardMean;
  private final double[][] boardSpread;

  /**
   * @param patches of one stratum, or of one board of it
   * @param draws equally weighted
   * @param seed draws the shifts of the boards at hand
   */
  PatchPredictions(List<ObservedPatch> patches, List<Draw> draws, long seed) {
    int n = patches.size();
    int boards = patches.stream().mapToInt(ObservedPatch::board).max().orElseThrow() + 1;
    logLikelihood = new double[n][draws.size()];
    unseen = new double[n][][];
    firstReading = new int[n + 1];
    for (int i = 0; i < n; i++) {
      unseen[i] = new double[patches.get(i).readings()][draws.size()];
      firstReading[i + 1] = firstReading[i] + patches.get(i).readings();
    }
    hazard = new double[draws.size()][firstReading[n]];
    boardMean = new double[boards][draws.size()];
    boardSpread = new double[boards][draws.size()];
    Random random = new Random(seed);
    for (int b = 0; b < boards; b++) {
      List<Integer> members = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        if (patches.get(i).board() == b) {
          members.add(i);
        }
      }
      BoardUnderDraw board = new BoardUnderDraw(members.stream().map(patches::get).toList());
      for (int s = 0; s < draws.size(); s++) {
        board.fill(draws.get(s));
        takeOut(board, members, s);
        predict(board, members, s, random.nextDouble());
        describe(board, b, s);
      }
    }
  }

  private void takeOut(BoardUnderDraw board, List<Integer> members, int s) {
    for (int m = 0; m < members.size(); m++) {
      int i = members.get(m);
      double[] survives = new double[unseen[i].length];
      logLikelihood[i][s] = board.leaveOut(m, survives);
      for (int k = 0; k < survives.length; k++) {
        unseen[i][k][s] = survives[k];
      }
    }
  }

  /** One shift of the board as it is known from all of its patches, the same for all of them. */
  private void predict(BoardUnderDraw board, List<Integer> members, int s, double share) {
    int node = 0;
    double reached = board.nodeWeights()[0];
    while (reached < share && node < board.nodeWeights().length - 1) {
      reached += board.nodeWeights()[++node];
    }
    for (int m = 0; m < members.size(); m++) {
      int first = firstReading[members.get(m)];
      int readings = firstReading[members.get(m) + 1] - first;
      for (int k = 0; k < readings; k++) {
        hazard[s][first + k] = board.hazard(m, k, node);
      }
    }
  }

  private void describe(BoardUnderDraw board, int b, int s) {
    double[] nodeWeights = board.nodeWeights();
    double mean = 0;
    double square = 0;
    for (int q = 0; q < nodeWeights.length; q++) {
      double x = board.node(q);
      mean += nodeWeights[q] * x;
      square += nodeWeights[q] * x * x;
    }
    boardMean[b][s] = mean;
    boardSpread[b][s] = Math.sqrt(Math.max(0, square - mean * mean));
  }

  /** ln of the chance of what a patch showed given the rest of its board, one per draw. */
  double[] logLikelihood(int patch) {
    return logLikelihood[patch];
  }

  /** Chance that a reading finds no event, given the rest of the board, one per draw. */
  double[] unseen(int patch, int reading) {
    return unseen[patch][reading];
  }

  /** Chance that a reading shows the event, none before having shown it, on the board at hand. */
  double hazard(int patch, int reading, int draw) {
    return hazard[draw][firstReading[patch] + reading];
  }

  /** Mean shift of a board in units of ω, one per draw. */
  double[] boardMean(int board) {
    return boardMean[board];
  }

  /** Standard deviation of that shift, one per draw. */
  double[] boardSpread(int board) {
    return boardSpread[board];
  }
}
