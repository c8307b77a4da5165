package spotline.viewer.model;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** Which spots and which scan everything shows. */
final class Choice {
    private final Workbench bench;

    Choice(Workbench bench) {
        this.bench = bench;
    }

    /** The scan of the same name comes along where the new spot has one. */
    void choose(String spot, boolean add) {
        List<String> before = bench.chosen().get();
        LinkedHashSet<String> spots = new LinkedHashSet<>(before);
        if (!add) spots = new LinkedHashSet<>(List.of(spot));
        else if (spots.contains(spot) && spots.size() > 1) spots.remove(spot);
        else spots.add(spot);
        String region = bench.primary()
                .flatMap(s -> Workbench.scan(s, bench.spectrum().get()))
                .map(LinkedSpectrum::region)
                .orElse("");
        boolean samePrimary =
                !before.isEmpty() && before.get(0).equals(spots.iterator().next());
        bench.chosen().set(List.copyOf(spots));
        if (!samePrimary) bench.fits().end();
        Optional<LinkedSpectrum> same = bench.primary()
                .flatMap(s -> s.spectra().stream()
                        .filter(x -> x.region().equals(region))
                        .findFirst());
        if (!samePrimary) {
            bench.spectrum().set(same.map(LinkedSpectrum::label).orElse(""));
            if (same.isEmpty()) firstScan();
        }
        bench.signing().drop();
    }

    void chooseSpectrum(String label) {
        if (bench.primary().flatMap(s -> Workbench.scan(s, label)).isEmpty()) {
            Optional<String> owner = bench.result()
                    .get()
                    .map(RunResult::spots)
                    .flatMap(all -> all.stream()
                            .filter(s -> Workbench.scan(s, label).isPresent())
                            .map(SpotResult::spot)
                            .findFirst());
            if (owner.isEmpty()) return;
            bench.chosen().set(List.of(owner.get()));
        }
        if (!label.equals(bench.spectrum().get())) bench.fits().end();
        bench.spectrum().set(label);
        bench.signing().drop();
    }

    void firstScan() {
        bench.primary()
                .flatMap(s -> s.spectra().stream().findFirst())
                .ifPresent(s -> bench.spectrum().set(s.label()));
    }

    List<BenchData> compared() {
        String name = bench.bench().get().map(BenchData::name).orElse("");
        List<String> chosen = bench.chosen().get();
        List<BenchData> others = new ArrayList<>();
        for (String id : chosen.subList(Math.min(1, chosen.size()), chosen.size())) {
            bench.spot(id)
                    .flatMap(s -> s.spectra().stream()
                            .filter(x -> x.region().equals(name))
                            .findFirst()
                            .flatMap(x -> BenchData.of(s, x.label())))
                    .ifPresent(others::add);
        }
        return others;
    }
}
