package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.HolderTemplate.StubSeat;
import spotline.holder.Specimen;
import spotline.holder.Transfer;

/** Stub seats, and the chain of protection of specimens that must not meet the air. */
final class TransferChecks {
    private final Layout layout;
    private final List<Finding> findings = new ArrayList<>();

    private TransferChecks(Layout layout) {
        this.layout = layout;
    }

    static List<Finding> findings(Layout layout) {
        TransferChecks checks = new TransferChecks(layout);
        for (Specimen specimen : layout.plan().specimens()) {
            boolean sensitive =
                    specimen.sample().isPresent() && specimen.sample().get().airSensitive();
            boolean seatTold = layout.holder().isPresent() && checks.seat(specimen);
            if (!seatTold && (sensitive || specimen.transfer().isPresent())) checks.needsSeat(specimen, sensitive);
            if (sensitive) checks.chain(specimen);
        }
        return checks.findings;
    }

    /** Whether something is wrong with the seat that the record names or that lies below. */
    private boolean seat(Specimen specimen) {
        Optional<String> named = specimen.mount().seat();
        Optional<StubSeat> seat = layout.seat(specimen);
        if (named.isPresent() && seat.isEmpty()) {
            List<String> seats = new ArrayList<>();
            for (StubSeat known : layout.holder().orElseThrow().stubSeats()) seats.add(known.id());
            String has = seats.isEmpty() ? "the holder has no stub seat" : "the holder has " + String.join(", ", seats);
            add(
                    specimen,
                    PlanRule.STUB_SEAT,
                    Named.capital(specimen) + " is declared to sit in seat " + named.get() + "; " + has + ".");
            return true;
        }
        if (named.isEmpty() || layout.footprint(specimen).isEmpty()) return false;
        StubSeat stub = seat.orElseThrow();
        Coordinate centre = new Coordinate(stub.centre().x(), stub.centre().y());
        double farthest = 0;
        for (Coordinate corner : Polygons.ring(layout.footprint(specimen).get())) {
            farthest = Math.max(farthest, corner.distance(centre));
        }
        double beyond = farthest - stub.diameterMm() / 2;
        if (beyond <= Reach.ROUNDING_MM) return false;
        add(
                specimen,
                PlanRule.STUB_SEAT,
                Named.capital(specimen) + " reaches " + Reach.millimetres(beyond) + " beyond the seat " + stub.id()
                        + ", " + Reach.millimetres(stub.diameterMm()) + " across.");
        return true;
    }

    private void needsSeat(Specimen specimen, boolean sensitive) {
        if (layout.holder().isEmpty() || layout.seat(specimen).isPresent()) return;
        String why = sensitive ? " must not meet the air" : " comes through a transfer vessel";
        String seat = layout.holder().get().stubSeats().isEmpty()
                ? ", and the holder has no stub seat for its transfer."
                : ", and does not sit in a stub seat of the holder.";
        add(specimen, PlanRule.TRANSFER_SEAT, Named.capital(specimen) + why + seat);
    }

    private void chain(Specimen specimen) {
        if (specimen.transfer().isEmpty()) {
            add(
                    specimen,
                    PlanRule.TRANSFER_RECORD,
                    Named.capital(specimen) + " must not meet the air, and no transfer is declared.");
            return;
        }
        Transfer transfer = specimen.transfer().get();
        if (transfer.secondsInAir().isEmpty()) {
            add(
                    specimen,
                    PlanRule.TRANSFER_RECORD,
                    "The transfer of " + specimen.label() + " does not say how long it is in air.");
        } else if (transfer.secondsInAir().getAsDouble() > 0) {
            add(
                    specimen,
                    PlanRule.TRANSFER_BROKEN,
                    Named.capital(specimen) + " must not meet the air, and is "
                            + Decimal.significant(transfer.secondsInAir().getAsDouble(), 3)
                            + " s in air between vessel and load lock.");
        }
    }

    private void add(Specimen specimen, PlanRule rule, String message) {
        findings.add(Named.finding(layout.plan(), specimen, rule, message));
    }
}
