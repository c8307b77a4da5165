package spotline.run.project;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.run.document.History;

/**
 * A saved history with the journal's operations done again.
 *
 * @param sequence number of the last operation in it
 * @param journal what stands in the journal
 * @param clean whether all of the journal belongs to the project; where not, it must be put aside before it is written on
 */
record Replay(History history, long sequence, Journal.Contents journal, boolean clean, List<Finding> findings) {
    Replay {
        findings = List.copyOf(findings);
    }

    /** Errors: {@link ReadException} when the journal is there but cannot be read. */
    static Replay of(Path project, History saved, long savedSequence) throws ReadException {
        Journal.Contents journal = Journal.read(Journal.beside(project));
        History history = saved;
        long sequence = savedSequence;
        int done = 0;
        Optional<String> unfit = journal.damage().map(d -> d.getMessage() + ".");
        for (Journal.Entry entry : journal.entries()) {
            if (entry.sequence() <= savedSequence) continue;
            boolean next = entry.sequence() == sequence + 1
                    && entry.before().equals(history.document().hash());
            if (!next) {
                unfit = Optional.of("Operation " + entry.sequence() + " of the journal was made on another document.");
                break;
            }
            try {
                history = entry.operation().on(history);
            } catch (ReadException e) {
                unfit = Optional.of("Operation " + entry.sequence() + " of the journal cannot be done again: "
                        + e.getMessage() + ".");
                break;
            }
            sequence = entry.sequence();
            done++;
        }
        List<Finding> findings = new ArrayList<>();
        if (done > 0) {
            findings.add(Finding.note(
                    "journal-replayed",
                    done + (done == 1 ? " operation" : " operations")
                            + " made since the project was saved came from its journal."));
        }
        unfit.ifPresent(why -> findings.add(
                Finding.caution("journal-not-used", why + " It and what follows it in the journal was not used.")));
        return new Replay(history, sequence, journal, unfit.isEmpty(), findings);
    }
}
