package org.stockcutting.io;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.math3.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.LengthFormatException;
import org.stockcutting.length.LengthUnit;
import org.stockcutting.length.Volume;
import org.stockcutting.length.VolumeReader;
import org.stockcutting.length.VolumeWriter;
import org.stockcutting.part.Making;
import org.stockcutting.part.Part;

/** Values of a goal as text: money in major units, numbers of boards, volumes in the job's unit; and dual values likewise. */
final class GoalText {

    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,40}(\\.[0-9]{1,40})?");
    private static final Pattern FRACTION = Pattern.compile("(-?[0-9]{1,600})(?:/([0-9]{1,600}))?");
    private static final BigInteger CUBIC_MILLIMETRE = BigInteger.TEN.pow(18);
    private static final int GAP_DECIMALS = 4;

    private final Job job;
    private final Goal goal;
    private final Set<String> panels;

    GoalText(Job job, Goal goal) {
        this.job = job;
        this.goal = goal;
        this.panels = job.parts().stream()
                .filter(p -> p.making() instanceof Making.GlueUp)
                .map(Part::id)
                .collect(Collectors.toSet());
    }

    String write(BigInteger atomic) {
        return switch (goal) {
            case COST -> money(atomic);
            case BOARDS -> atomic.toString();
            case WASTE -> new VolumeWriter(job.writing().unit()).exact(new Volume(atomic));
        };
    }

    /** Minor units as an amount with a decimal point. */
    String money(BigInteger minorUnits) {
        return new BigDecimal(minorUnits, digits()).toPlainString();
    }

    /** The value in atomic units, or null if the text is none. */
    @Nullable BigInteger read(String text) {
        return switch (goal) {
            case COST -> readMoney(text);
            case BOARDS -> whole(decimal(text), 0);
            case WASTE -> readVolume(text);
        };
    }

    @Nullable BigInteger readMoney(String text) {
        return whole(decimal(text), digits());
    }

    private @Nullable BigInteger readVolume(String text) {
        try {
            return new VolumeReader(job.writing().unit()).read(text).cubicNanometres();
        } catch (LengthFormatException e) {
            return null;
        }
    }

    static @Nullable BigDecimal decimal(String text) {
        return DECIMAL.matcher(text).matches() ? new BigDecimal(text) : null;
    }

    private static @Nullable BigInteger whole(@Nullable BigDecimal value, int digits) {
        if (value == null || value.stripTrailingZeros().scale() > digits) {
            return null;
        }
        return value.movePointRight(digits).toBigIntegerExact();
    }

    private int digits() {
        return job.writing().currency().getDefaultFractionDigits();
    }

    /** (value - bound) / value, rounded up to four decimals; 0 where the value is 0. */
    static String gap(BigInteger value, BigInteger bound) {
        if (value.signum() == 0) {
            return BigDecimal.ZERO.setScale(GAP_DECIMALS).toPlainString();
        }
        return new BigDecimal(value.subtract(bound))
                .divide(new BigDecimal(value), GAP_DECIMALS, RoundingMode.CEILING)
                .toPlainString();
    }

    /** A dual value as a fraction of whole numbers: in the unit of the goal for a piece, or for a unit of a panel's width. */
    String dual(String part, BigFraction atomic) {
        BigFraction value = atomic.multiply(perPiece(part)).divide(unitOfGoal());
        BigInteger denominator = value.getDenominator();
        return denominator.equals(BigInteger.ONE)
                ? value.getNumerator().toString()
                : value.getNumerator() + "/" + denominator;
    }

    @Nullable BigFraction readDual(String part, String text) {
        var form = FRACTION.matcher(text);
        if (!form.matches()) {
            return null;
        }
        BigInteger denominator = form.group(2) == null ? BigInteger.ONE : new BigInteger(form.group(2));
        if (denominator.signum() == 0) {
            return null;
        }
        return new BigFraction(new BigInteger(form.group(1)), denominator)
                .multiply(unitOfGoal())
                .divide(perPiece(part));
    }

    private BigInteger unitOfGoal() {
        return switch (goal) {
            case COST -> BigInteger.TEN.pow(digits());
            case BOARDS -> BigInteger.ONE;
            case WASTE -> CUBIC_MILLIMETRE;
        };
    }

    /** Panels are worth something a nanometre of width; people read that per millimetre or per inch. */
    private BigInteger perPiece(String part) {
        LengthUnit unit = job.writing().unit().isImperial() ? LengthUnit.INCH : LengthUnit.MILLIMETRE;
        return panels.contains(part) ? BigInteger.valueOf(unit.nanometres()) : BigInteger.ONE;
    }
}
