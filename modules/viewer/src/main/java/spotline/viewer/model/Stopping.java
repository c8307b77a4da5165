package spotline.viewer.model;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import spotline.run.document.LivingRun;

/** Work that is going on can be given up, and taken up again. */
public final class Stopping {
    private final Workbench bench;
    private final BooleanProperty stopped = new SimpleBooleanProperty(false);

    Stopping(Workbench bench) {
        this.bench = bench;
    }

    /** Gives up the work that is going on: a fit, or the results of the last change. */
    public void cancel() {
        bench.fits().cancel();
        if (bench.busy().get()) bench.living().ifPresent(LivingRun::stop);
    }

    /** Results of the last change are wanted after all. */
    public void goOn() {
        stopped.set(false);
        bench.living().filter(run -> !run.isSettled()).ifPresent(run -> {
            bench.busy().set(true);
            run.goOn();
        });
    }

    /** Whether work was given up, so that what is shown is older than the last change. */
    public BooleanProperty stopped() {
        return stopped;
    }
}
