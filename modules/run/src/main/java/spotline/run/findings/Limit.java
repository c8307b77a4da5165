package spotline.run.findings;

/**
 * A threshold of a rule.
 *
 * @param value by default; not a number where a laboratory has to state its own
 * @param source of the value
 * @param setting where it is set: {@code findings.limits.NAME} of the treatment, another setting of the treatment,
 *     {@code planCheck.…} of the holder run, or empty where it is fixed
 */
public record Limit(String name, double value, String unit, String source, String setting) {
    static final String PRACTICE = "common practice, no source";
    static final String DERIVED = "derived";

    private static final String OWN = "findings.limits.";
    private static final String PLAN = "planCheck.";

    /** One of the rules' own. */
    static Limit own(String name, double value, String unit, String source) {
        return new Limit(name, value, unit, source, OWN + name);
    }

    /** One that another step holds its own findings to. */
    static Limit of(String setting, double value, String unit, String source) {
        return new Limit(setting.substring(setting.lastIndexOf('.') + 1), value, unit, source, setting);
    }

    /** A number of the computation itself. */
    static Limit fixed(String name, double value, String unit, String source) {
        return new Limit(name, value, unit, source, "");
    }

    boolean inPlan() {
        return setting.startsWith(PLAN);
    }

    /** JSON pointer of the setting in the treatment, or in the thresholds of the mounting checks. */
    String pointer() {
        String path = inPlan() ? setting.substring(PLAN.length()) : setting;
        return "/" + path.replace('.', '/');
    }

    public boolean isOwn() {
        return setting.startsWith(OWN);
    }
}
