package spotline.run;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.OptionalDouble;
import spotline.core.ReadException;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns;
import spotline.formats.text.TextColumnsReader;
import spotline.formats.text.TextSpectrum;
import spotline.formats.text.UndeclaredColumns;
import spotline.spectra.EnergyScale;

/** Any bytes, looked at undeclared and read by several declarations, end in the reader's own error or in a spectrum. */
class TextColumnsFuzzTest {
    private static final List<TextColumns> DECLARATIONS = List.of(
            new TextColumns(
                    1,
                    2,
                    EnergyScale.BINDING,
                    TextColumns.OrdinateKind.COUNTS,
                    OptionalDouble.of(0.1),
                    OptionalDouble.of(4),
                    OptionalDouble.of(20),
                    1486.6),
            new TextColumns(
                    2,
                    1,
                    EnergyScale.KINETIC,
                    TextColumns.OrdinateKind.COUNTS_PER_SECOND,
                    OptionalDouble.of(0.1),
                    OptionalDouble.of(4),
                    OptionalDouble.empty(),
                    1253.6),
            TextColumns.of(1, 3, EnergyScale.BINDING, 1486.6));

    @FuzzTest(maxDuration = "10m")
    void bytes(byte[] bytes) {
        CpuLimit limit = new CpuLimit();
        TextColumnsReader.probe(bytes);
        try {
            UndeclaredColumns.look("fuzz", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT);
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
        for (TextColumns columns : DECLARATIONS) read(bytes, columns);
        limit.check();
    }

    private static void read(byte[] bytes, TextColumns columns) {
        try {
            TextSpectrum read = TextColumnsReader.read(
                    "fuzz", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT, columns);
            if (read.set().axis().channels() < 2) throw new AssertionError("a spectrum of fewer than two channels");
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
    }
}
