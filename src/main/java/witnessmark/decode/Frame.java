package witnessmark.decode;

/** What a serial line delivered between two frame boundaries. */
public sealed interface Frame permits Whole, Broken {}
