package spotline.viewer.screen;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.report.text.Shown;
import spotline.viewer.model.Account;
import spotline.viewer.model.Words;

/** The account of a spot: a card a step, each with its decision in one sentence; unfolding shows the facts behind it. */
public final class AccountPane extends ScrollPane {
    private final Words words;
    private final Consumer<String> showSpectrum;
    private final Consumer<Finding> silence;
    private final Runnable editFit;
    private final VBox cards = new VBox(8);
    private final Set<Account.Step> open = EnumSet.noneOf(Account.Step.class);

    /**
     * @param showSpectrum brings the scan behind a fact to the bench
     * @param silence is asked to silence a finding
     * @param editFit opens the fit of the scan on the bench
     */
    public AccountPane(Words words, Consumer<String> showSpectrum, Consumer<Finding> silence, Runnable editFit) {
        this.words = words;
        this.showSpectrum = showSpectrum;
        this.silence = silence;
        this.editFit = editFit;
        setId("account");
        getStyleClass().add("account");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        cards.getStyleClass().add("cards");
        setContent(cards);
    }

    public void show(Optional<Account> account) {
        cards.getChildren().clear();
        account.ifPresent(a -> a.cards().forEach(c -> cards.getChildren().add(card(c))));
    }

    private Node card(Account.Card card) {
        VBox box = new VBox(4);
        box.setId("card-" + card.step().name().toLowerCase(java.util.Locale.ROOT));
        box.getStyleClass().addAll("card", card.standing().word());
        Label sentence = new Label(card.sentence());
        sentence.setWrapText(true);
        sentence.getStyleClass().add("sentence");
        sentence.setMaxWidth(Double.MAX_VALUE);
        Label name = new Label(words.of(card.step().key()));
        name.getStyleClass().add("card-name");
        box.setAccessibleRole(AccessibleRole.TEXT);
        box.setAccessibleText(name.getText() + ": " + card.sentence());
        box.getChildren().addAll(name, sentence);
        if (card.step() == Account.Step.FIT) {
            Hyperlink edit = new Hyperlink(words.of("fit.edit"));
            edit.setId("fit-edit");
            edit.setOnAction(e -> editFit.run());
            box.getChildren().add(edit);
        }
        if (!card.facts().isEmpty()) box.getChildren().add(unfolding(card, facts(card), words.of("card.evidence")));
        if (!card.findings().isEmpty()) box.getChildren().add(unfolding(card, findings(card), words.of("card.list")));
        return box;
    }

    private TitledPane unfolding(Account.Card card, Node content, String title) {
        TitledPane pane = new TitledPane(title, content);
        pane.setAnimated(false);
        pane.setAccessibleText(words.of(card.step().key()) + ": " + title);
        pane.setExpanded(open.contains(card.step()));
        pane.expandedProperty().addListener((o, was, is) -> {
            if (is) open.add(card.step());
            else open.remove(card.step());
        });
        return pane;
    }

    private Node facts(Account.Card card) {
        GridPane grid = new GridPane();
        grid.setHgap(10);
        grid.setVgap(2);
        ColumnConstraints name = new ColumnConstraints();
        name.setPercentWidth(36);
        ColumnConstraints value = new ColumnConstraints();
        value.setHgrow(Priority.ALWAYS);
        grid.getColumnConstraints().addAll(name, value);
        int row = 0;
        for (Account.Fact fact : card.facts()) {
            Label what = new Label(fact.name());
            what.getStyleClass().add("fact-name");
            what.setWrapText(true);
            grid.add(what, 0, row);
            grid.add(value(fact), 1, row++);
        }
        return grid;
    }

    private Node value(Account.Fact fact) {
        if (fact.spectrum().isEmpty()) {
            Label text = new Label(fact.value());
            text.setWrapText(true);
            return text;
        }
        Hyperlink link = new Hyperlink(fact.value());
        link.setWrapText(true);
        link.setOnAction(e -> showSpectrum.accept(fact.spectrum()));
        link.setAccessibleHelp(words.of("card.shows-scan"));
        return link;
    }

    private Node findings(Account.Card card) {
        VBox list = new VBox(6);
        for (Finding f : card.findings()) {
            VBox box = new VBox(1);
            box.getStyleClass().addAll("finding", f.severity().word());
            Label message = new Label(words.word(f.severity().word()) + "  " + Shown.text(f.message()));
            message.setWrapText(true);
            box.getChildren().add(message);
            GridPane links = new GridPane();
            links.setHgap(8);
            if (!f.spectrum().isEmpty()) {
                Hyperlink where = new Hyperlink(Shown.label(f.spectrum()));
                where.setOnAction(e -> showSpectrum.accept(f.spectrum()));
                links.add(where, 0, 0);
            }
            if (f.severity() != Severity.NOTE) {
                Hyperlink quiet = new Hyperlink(words.of("finding.silence"));
                quiet.setId("silence-" + f.rule());
                quiet.setOnAction(e -> silence.accept(f));
                links.add(quiet, 1, 0);
            }
            if (!links.getChildren().isEmpty()) box.getChildren().add(links);
            list.getChildren().add(box);
        }
        return list;
    }
}
