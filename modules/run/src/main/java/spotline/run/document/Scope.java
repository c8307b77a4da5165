package spotline.run.document;

/** Whose settings an edit changes: the nearer one wins over the wider. */
public sealed interface Scope {
    /** All spots of the holder. */
    record Holder() implements Scope {}

    /** All spots whose sample is of a family. */
    record Family(String name) implements Scope {
        public Family {
            if (name.isBlank()) throw new IllegalArgumentException("a family needs a name");
        }
    }

    /** One spot. */
    record Spot(String id) implements Scope {
        public Spot {
            if (id.isBlank()) throw new IllegalArgumentException("a spot needs an id");
        }
    }

    static Scope holder() {
        return new Holder();
    }

    static Scope family(String name) {
        return new Family(name);
    }

    static Scope spot(String id) {
        return new Spot(id);
    }

    /** How titles name it: {@code "spot 3"}. */
    default String words() {
        if (this instanceof Family family) return "family " + family.name();
        if (this instanceof Spot spot) return "spot " + spot.id();
        return "all spots";
    }

    /** Where its patch stands in the holder-run file. Errors: {@link IllegalArgumentException} for a spot that is not there. */
    default String pointer(RunDocument document) {
        if (this instanceof Family family) return "/families/" + Places.segment(family.name());
        if (this instanceof Spot spot) return "/spots/" + document.indexOf(spot.id()) + "/treatment";
        return "/treatment";
    }
}
