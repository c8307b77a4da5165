package spotline.analysis.charge;

/** What the record says that bears on charging. */
public record SpotCondition(Conduction conduction, Contact contact, CarbonOrigin carbon) {
    public enum Conduction {
        CONDUCTOR,
        SEMICONDUCTOR,
        INSULATOR,
        MIXED,
        UNKNOWN
    }

    public enum Contact {
        GROUNDED,
        ISOLATED,
        UNKNOWN
    }

    public enum CarbonOrigin {
        ADVENTITIOUS,
        OWN,
        UNKNOWN
    }
}
