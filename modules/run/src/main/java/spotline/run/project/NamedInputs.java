package spotline.run.project;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import spotline.holder.DeclaredTransmission;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderTemplates;
import spotline.holder.SpectrumEntry;
import spotline.holder.SpotEntry;
import spotline.run.QuantifySettings;
import spotline.run.Treatment;
import spotline.run.document.RunDocument;

/** The files that a document names. */
final class NamedInputs {
    private static final int LONGEST = 60;

    private NamedInputs() {}

    /** Each once, in the order of the holder run, spectra first. */
    static List<String> of(RunDocument document) {
        HolderRunFile file = document.file();
        Set<String> names = new LinkedHashSet<>();
        for (SpotEntry spot : file.spots()) {
            for (SpectrumEntry entry : spot.spectra()) names.add(entry.file());
        }
        if (file.instrument().transmission() instanceof DeclaredTransmission.FromFile table) names.add(table.file());
        file.instrument().energyCalibration().ifPresent(names::add);
        file.holderTemplate().filter(t -> !HolderTemplates.SHIPPED.contains(t)).ifPresent(names::add);
        for (Treatment treatment : document.treatments()) {
            if (treatment.quantify().factors() instanceof QuantifySettings.FactorChoice.FromFile factors) {
                names.add(factors.file());
            }
        }
        return new ArrayList<>(names);
    }

    /** A place in a project that no other file has, whatever is in the name. @param index from 0 */
    static String place(int index, String name) {
        String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String plain = last.replaceAll("[^A-Za-z0-9._-]", "_");
        String tail = plain.length() > LONGEST ? plain.substring(plain.length() - LONGEST) : plain;
        return String.format(Locale.ROOT, "raw/%04d-%s", index + 1, tail);
    }
}
