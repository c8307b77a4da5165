package spotline.demo;

import java.util.List;

/**
 * A broad Auger feature: a share of the holes that the source makes in some levels.
 *
 * <p>Every core hole of these levels decays by an Auger process (fluorescence yields are below 2 % for the K holes here
 * and below 5 % for the L and M holes), so its intensity is the holes made, {@code cross section x atoms}, times its
 * share, times the mean free path at its own energy.
 *
 * @param kineticEv of an uncharged sample, from the Fermi level
 * @param levels whose holes feed it, as {@link AtomicData.Level#level()}
 * @param share of those holes
 */
record AugerGroup(String element, String name, double kineticEv, double fwhmEv, List<String> levels, double share) {
    private static final List<String> K = List.of("1s");
    private static final List<String> L2 = List.of("2p1/2");
    private static final List<String> L3 = List.of("2p3/2");
    private static final List<String> L23 = List.of("2p1/2", "2p3/2");
    private static final List<String> M4 = List.of("3d3/2");
    private static final List<String> M5 = List.of("3d5/2");

    /**
     * Groups between 250 and 1100 eV of the elements that the demonstration uses. Energies, widths and shares from
     * memory, as rounded general knowledge of the field; Al, Si, S and Cl have none in the range of an Al K-alpha survey.
     */
    private static final List<AugerGroup> ALL = List.of(
            new AugerGroup("C", "KVV", 263, 12, K, 1),
            new AugerGroup("N", "KVV", 382, 8, K, 1),
            new AugerGroup("O", "KL23L23", 510, 6, K, 0.62),
            new AugerGroup("O", "KL1L23", 489, 7, K, 0.28),
            new AugerGroup("O", "KL1L1", 473, 8, K, 0.10),
            new AugerGroup("F", "KL23L23", 652.4, 6, K, 0.64),
            new AugerGroup("F", "KL1L23", 627, 7, K, 0.27),
            new AugerGroup("F", "KL1L1", 601, 8, K, 0.09),
            new AugerGroup("Na", "KL23L23", 991, 4, K, 0.66),
            new AugerGroup("Na", "KL1L23", 957, 6, K, 0.26),
            new AugerGroup("Ti", "LM45M45", 450, 9, L23, 0.12),
            new AugerGroup("Ti", "LM23M45", 415, 9, L23, 0.50),
            new AugerGroup("Ti", "LM23M23", 382, 10, L23, 0.38),
            new AugerGroup("Cu", "L3M45M45", 918.6, 4, L3, 0.62),
            new AugerGroup("Cu", "L2M45M45", 938, 5, L2, 0.62),
            new AugerGroup("Zn", "L3M45M45", 988.2, 4, L3, 0.62),
            new AugerGroup("Zn", "L2M45M45", 1011.5, 5, L2, 0.62),
            new AugerGroup("Zn", "L3M23M45", 910, 10, L3, 0.28),
            new AugerGroup("Zn", "L2M23M45", 933, 10, L2, 0.28),
            new AugerGroup("Zn", "L3M23M23", 828, 12, L3, 0.10),
            new AugerGroup("Zn", "L2M23M23", 851, 12, L2, 0.10),
            new AugerGroup("Ag", "M4N45N45", 357.9, 4, M4, 0.75),
            new AugerGroup("Ag", "M5N45N45", 351.9, 4, M5, 0.75),
            new AugerGroup("Ag", "M45N23N45", 300, 14, List.of("3d3/2", "3d5/2"), 0.15));

    static List<AugerGroup> of(String element) {
        return ALL.stream().filter(group -> group.element.equals(element)).toList();
    }
}
