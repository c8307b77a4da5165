package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.Quantified;
import spotline.core.Decimal;
import spotline.holder.Instrument;
import spotline.holder.NeutraliserState;
import spotline.report.facts.MethodFacts;
import spotline.report.text.DisplayNumber;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** One paragraph for a paper, from the record and the treatment; what the record does not tell is named as missing. */
final class MethodsParagraph {
    private MethodsParagraph() {}

    static String of(RunResult result) {
        List<String> missing = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        sentences.add(instrument(result, missing));
        sentences.add(scans(result));
        sentences.addAll(charge(result));
        sentences.add(intensities(result));
        sentences.addAll(fits(result));
        sentences.add(factors(result));
        sentences.add(
                "Uncertainties are standard uncertainties (coverage factor 1, JCGM 100:2008); detection limits follow"
                        + " ISO 19668.");
        sentences.add("Data were treated with Spotline " + result.programVersion() + ".");
        if (!missing.isEmpty()) {
            sentences.add("[To be added, the record does not tell: " + String.join(", ", missing) + ".]");
        }
        return sentences.stream().filter(s -> !s.isEmpty()).collect(Collectors.joining(" "));
    }

    private static String instrument(RunResult result, List<String> missing) {
        Instrument instrument = result.plan().file().instrument();
        String name = instrument.name().orElse("");
        if (name.isEmpty()) missing.add("the spectrometer");
        StringBuilder text = new StringBuilder("X-ray photoelectron spectra were measured")
                .append(name.isEmpty() ? "" : " with a spectrometer \u201c" + name + "\u201d")
                .append(" using ")
                .append(RunHeader.source(result));
        String power = InstrumentRecord.power(result);
        if (power.isEmpty()) missing.add("the X-ray power");
        else text.append(" at ").append(power);
        if (instrument.analysisArea().isPresent()) {
            text.append(", from an area of ")
                    .append(instrument.analysisArea().get().x())
                    .append(" mm by ")
                    .append(instrument.analysisArea().get().y())
                    .append(" mm");
        } else {
            missing.add("the analysis area");
        }
        if (instrument.emissionAngleDeg().isPresent()) {
            text.append(", at an emission angle of ").append(RunHeader.degrees(instrument.emissionAngleDeg()));
        } else {
            missing.add("the emission angle");
        }
        NeutraliserState neutraliser = instrument.chargeNeutraliser();
        if (RunHeader.known(neutraliser.word()).isEmpty()) missing.add("the charge neutraliser");
        else text.append("; charge neutraliser ").append(neutraliser.word());
        String pressure = InstrumentRecord.pressure(result);
        if (pressure.isEmpty()) missing.add("the pressure");
        else text.append("; pressure while measuring ").append(pressure);
        return text.append('.').toString();
    }

    private static String scans(RunResult result) {
        String survey = settings(result, true);
        String narrow = settings(result, false);
        List<String> parts = new ArrayList<>();
        if (!survey.isEmpty()) parts.add("Survey spectra were recorded with " + survey);
        if (!narrow.isEmpty()) parts.add((parts.isEmpty() ? "Narrow scans" : "narrow scans") + " with " + narrow);
        return parts.isEmpty() ? "" : String.join(", ", parts) + ".";
    }

    private static String settings(RunResult result, boolean survey) {
        TreeSet<String> pass = new TreeSet<>();
        TreeSet<String> steps = new TreeSet<>();
        for (SpotResult spot : result.spots()) {
            for (LinkedSpectrum spectrum : spot.spectra()) {
                if (spectrum.survey() != survey) continue;
                if (spectrum.scan().passEnergyEv().isPresent()) {
                    pass.add(Decimal.significant(spectrum.scan().passEnergyEv().getAsDouble(), 4));
                }
                steps.add(Decimal.significant(spectrum.scan().stepEv(), 3));
            }
        }
        if (steps.isEmpty()) return "";
        String energy = pass.isEmpty() ? "" : "a pass energy of " + String.join(" and ", pass) + " eV and ";
        return energy + "steps of " + String.join(" and ", steps) + " eV";
    }

    private static List<String> charge(RunResult result) {
        Map<String, List<String>> bySentence = new LinkedHashMap<>();
        for (SpotResult spot : result.spots()) {
            bySentence
                    .computeIfAbsent(reference(spot.charge()), s -> new ArrayList<>())
                    .add(spot.spot());
        }
        List<String> sentences = new ArrayList<>();
        bySentence.forEach((sentence, spots) ->
                sentences.add(sentence + (bySentence.size() > 1 ? " (spot " + String.join(", ", spots) + ")." : ".")));
        return sentences;
    }

    private static String reference(ChargeReference charge) {
        if (charge.verdict() == ChargeVerdict.FAILED)
            return "Binding energies are as measured, no reference could be set";
        if (charge.method() == ChargeMethod.NONE) {
            return "Binding energies are referenced to the Fermi level of the spectrometer, without correction";
        }
        return "Binding energies are referenced to " + charge.referenceLine()
                + (charge.referenceEv().isPresent()
                        ? " at "
                                + DisplayNumber.of(charge.referenceEv().getAsDouble(), charge.referenceU(), 2)
                                        .text() + " eV"
                        : "")
                + " (method: " + charge.method().word().replace('-', ' ') + "; ISO 19318)";
    }

    private static String intensities(RunResult result) {
        Set<String> backgrounds = new LinkedHashSet<>(MethodFacts.backgrounds(result, false));
        backgrounds.addAll(MethodFacts.backgrounds(result, true));
        if (backgrounds.isEmpty()) return "";
        return "Intensities are peak areas above the inelastic background (" + String.join("; ", backgrounds)
                + sources(backgrounds) + "; ISO 20903).";
    }

    private static String sources(Set<String> backgrounds) {
        String all = String.join(" ", backgrounds).toLowerCase(java.util.Locale.ROOT);
        String text = "";
        if (all.contains("shirley")) text += "; D. A. Shirley, Phys. Rev. B 5 (1972) 4709";
        if (all.contains("tougaard")) text += "; S. Tougaard, Surf. Interface Anal. 11 (1988) 453";
        return text;
    }

    private static List<String> fits(RunResult result) {
        TreeSet<String> shapes = new TreeSet<>();
        for (SpotResult spot : result.spots()) spot.peaks().forEach(peak -> shapes.add(peak.shape()));
        if (shapes.isEmpty()) return List.of();
        return List.of("Component peaks (" + String.join(", ", shapes)
                + ") were fitted by maximum Poisson likelihood (P. J. Cumpson and M. P. Seah, Surf. Interface Anal. 18 (1992)"
                + " 345); constraints and residuals are listed with each fit.");
    }

    private static String factors(RunResult result) {
        Set<String> sets = new LinkedHashSet<>();
        for (SpotResult spot : result.spots()) {
            spot.factors().map(FactorSet::describe).ifPresent(sets::add);
        }
        String factors = sets.isEmpty() ? MethodFacts.FACTORS : String.join(" and ", sets);
        return "Atomic percentages follow from relative sensitivity factors (" + factors
                + "; ISO 18118) after correction for the response of the spectrometer, for a surface taken as homogeneous; they sum"
                + " to 100 over the elements listed, hydrogen and helium excluded.";
    }

    /** Elements that a reader may miss. */
    static String excluded(RunResult result) {
        List<String> parts = new ArrayList<>();
        parts.add("Hydrogen and helium are not seen by the technique.");
        for (SpotResult spot : result.spots()) {
            Set<String> quantified =
                    spot.composition().stream().map(Quantified::element).collect(Collectors.toSet());
            List<String> left = spot.identification().stream()
                    .flatMap(found -> found.elements().stream())
                    .filter(e -> e.verdict() == Verdict.PRESENT)
                    .map(ElementSeen::element)
                    .filter(e -> !quantified.contains(e))
                    .toList();
            List<String> possible = spot.identification().stream()
                    .flatMap(found -> found.elements().stream())
                    .filter(e -> e.verdict() == Verdict.POSSIBLE)
                    .map(ElementSeen::element)
                    .filter(e -> !quantified.contains(e))
                    .toList();
            if (!left.isEmpty()) {
                parts.add("Spot " + spot.spot() + ": " + String.join(", ", left)
                        + " seen in the survey but without a line that could be quantified.");
            }
            if (!possible.isEmpty()) {
                parts.add("Spot " + spot.spot() + ": " + String.join(", ", possible)
                        + " possible only, and therefore not counted.");
            }
        }
        return String.join(" ", parts);
    }
}
