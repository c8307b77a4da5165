package spotline.viewer.model;

import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.LivingRun;
import spotline.run.document.RunDocument;

/** A change by hand waits here for who made it and why; without them it is not made. */
public final class Signing {
    private final Workbench bench;
    private final ObjectProperty<Optional<Pending>> pending = new SimpleObjectProperty<>(Optional.empty());

    Signing(Workbench bench) {
        this.bench = bench;
    }

    public ObjectProperty<Optional<Pending>> pending() {
        return pending;
    }

    void propose(String title, Function<String, Edit> edit) {
        pending.set(Optional.of(new Pending(title, edit)));
    }

    /** Does what is pending. What is missing or refused becomes the workbench's fault, and it goes on waiting. */
    public void keep(String who, String why) {
        Optional<LivingRun> run = bench.living();
        if (run.isEmpty() || pending.get().isEmpty()) return;
        if (why.isBlank()) {
            bench.fault().set(bench.words().of("reason.missing"));
            return;
        }
        try {
            Edit edit = pending.get().get().edit().apply(why.strip());
            bench.fault().set("");
            bench.busy().set(true);
            run.get().apply(edit.signed(who, why.strip()).at(bench.now()));
            pending.set(Optional.empty());
        } catch (ReadException e) {
            bench.failed(String.valueOf(e.getMessage()));
        }
    }

    /** Gives up what is pending: everything is shown as the results have it. */
    public void drop() {
        pending.set(Optional.empty());
        bench.windows().giveUp();
        bench.refresh();
    }

    /** A finding is to be silenced. */
    public void silence(Finding finding) {
        if (bench.living().isEmpty()) return;
        RunDocument document = bench.living().get().document();
        Optional<String> spot = finding.spot().isEmpty() ? Optional.empty() : Optional.of(finding.spot());
        propose(
                spot.map(s -> bench.words().of("finding.silencing-at", finding.rule(), s))
                        .orElseGet(() -> bench.words().of("finding.silencing", finding.rule())),
                why -> Edits.silence(document, finding.rule(), spot, why));
    }
}
