package witnessmark.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads numbers and dates off the command line, and says in words what else would be right. */
final class Typed {
  private Typed() {}

  /** Lets the command line and all its commands read so. */
  static CommandLine by(CommandLine line) {
    // One object for both: a Java 17 that archives its classes dies of two references alike.
    ITypeConverter<Long> number = Typed::number;
    return line.registerConverter(Long.class, number)
        .registerConverter(long.class, number)
        .registerConverter(LocalDate.class, Typed::date);
  }

  private static Long number(String text) {
    try {
      return Long.valueOf(text);
    } catch (NumberFormatException e) {
      throw new TypeConversionException("\"" + text + "\" is no whole number; write one like 57");
    }
  }

  private static LocalDate date(String text) {
    try {
      if (text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
        return LocalDate.parse(text);
      }
    } catch (DateTimeException e) {
      // of the right form, but no day: told below
    }
    throw new TypeConversionException(
        "\"" + text + "\" is no day of the calendar; write year-month-day, e.g. 2026-09-01");
  }
}
