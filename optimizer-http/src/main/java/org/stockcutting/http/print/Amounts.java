package org.stockcutting.http.print;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Locale;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Writing;
import org.stockcutting.stock.Money;

/** Money, and values of the job's goal, as a maker reads them. */
public final class Amounts {

    /** One board foot is 144 cubic inches (NIST Handbook 130, method of sale of softwood lumber), in cubic nanometres. */
    private static final BigInteger BOARD_FOOT =
            BigInteger.valueOf(25_400_000L).pow(3).multiply(BigInteger.valueOf(144));

    private static final BigInteger CUBIC_DECIMETRE = BigInteger.TEN.pow(24);

    private final Writing writing;

    public Amounts(Writing writing) {
        this.writing = writing;
    }

    /** {@code $150.92}, {@code CHF 12.00}. */
    public String money(Money money) {
        Currency currency = money.currency();
        String symbol = currency.getSymbol(Locale.US);
        boolean letters = Character.isLetter(symbol.charAt(symbol.length() - 1));
        return symbol + (letters ? " " : "") + decimal(money.amount());
    }

    /** A value of the goal, rounded up where it cannot be exact: a plan is never shown better than it is. */
    public String value(Goal goal, BigInteger atoms) {
        return amount(goal, atoms, RoundingMode.UP);
    }

    /** A bound of the goal, rounded down where it cannot be exact: no more is claimed than is proved. */
    public String bound(Goal goal, BigInteger atoms) {
        return amount(goal, atoms, RoundingMode.DOWN);
    }

    /** A decimal with the job's decimal mark. */
    public String decimal(BigDecimal number) {
        return number.toPlainString().replace('.', writing.decimal());
    }

    private String amount(Goal goal, BigInteger atoms, RoundingMode rounding) {
        return switch (goal) {
            case COST ->
                money(new Money(
                        new BigDecimal(atoms, Math.max(0, writing.currency().getDefaultFractionDigits())),
                        writing.currency()));
            case BOARDS -> atoms + (atoms.equals(BigInteger.ONE) ? " board" : " boards");
            case WASTE -> volume(atoms, rounding);
        };
    }

    private String volume(BigInteger cubicNanometres, RoundingMode rounding) {
        boolean imperial = writing.unit().isImperial();
        BigDecimal unit = new BigDecimal(imperial ? BOARD_FOOT : CUBIC_DECIMETRE);
        BigDecimal amount = new BigDecimal(cubicNanometres).divide(unit, 2, rounding);
        return decimal(amount) + (imperial ? " board feet" : " dm3");
    }
}
