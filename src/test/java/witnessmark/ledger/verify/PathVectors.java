package witnessmark.ledger.verify;

import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * Paths through the trees over {@link TreeVectors#LEAVES}.
 *
 * <p>Source: the positive cases of transparency-dev/merkle, {@code testdata/inclusion} and {@code
 * testdata/consistency} (Apache-2.0), read there; their hashes are the nodes of {@code
 * testonly/constants.go}, named here by level and index. All were also recomputed in Python from
 * the definitions of RFC 6962.
 */
public final class PathVectors {
  /** Leaf and size, with the path's nodes. */
  public record Case(long first, long size, List<byte[]> path) {
    static Case of(long first, long size, String... nodes) {
      return new Case(first, size, Stream.of(nodes).map(HexFormat.of()::parseHex).toList());
    }
  }

  private static final String L0 =
      "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d";
  private static final String L1 =
      "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7";
  private static final String L2 =
      "0298d122906dcfc10892cb53a73992fc5b9f493ea4c9badb27b791b4127a7fe7";
  private static final String L4 =
      "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b";
  private static final String L6 =
      "b08693ec2e721597130641e8211e7eedccb4c26413963eee6c1e2ed16ffb1a5f";
  private static final String N10 =
      "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125";
  private static final String N11 =
      "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e";
  private static final String N12 =
      "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a";
  private static final String N13 =
      "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0";
  private static final String N20 =
      "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7";
  private static final String N21 =
      "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4";

  /** Nodes 4 to 6 of seven leaves: no full subtree, so not in constants.go; recomputed. */
  private static final String N4TO6 =
      "837dbb152e9b079010717e84e865da4ebc0fa198a806d59d31bf15accef22d0e";

  public static final List<Case> INCLUSION =
      List.of(
          Case.of(0, 1),
          Case.of(0, 8, L1, N11, N21),
          Case.of(5, 8, L4, N13, N20),
          Case.of(2, 3, N10),
          Case.of(1, 5, L0, N11, L4));

  public static final List<Case> CONSISTENCY =
      List.of(
          Case.of(1, 1),
          Case.of(1, 8, L1, N11, N21),
          Case.of(6, 8, N12, N13, N20),
          Case.of(2, 5, N11, L4),
          Case.of(4, 7, N4TO6),
          Case.of(
              3,
              7,
              L2,
              "07506a85fd9dd2f120eb694f86011e5bb4662e5c415a62917033d4a9624487e7",
              N10,
              N4TO6),
          Case.of(6, 7, N12, L6, N20));

  private PathVectors() {}
}
