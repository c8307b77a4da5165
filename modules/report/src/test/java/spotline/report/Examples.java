package spotline.report;

import spotline.run.RunResult;

/** The invented run for the tests of other packages. */
public final class Examples {
    private Examples() {}

    public static RunResult plain() {
        return ExampleRun.plain();
    }

    public static RunResult named(String title, String sample, String file) {
        return ExampleRun.named(title, sample, file);
    }
}
