namespace LabPipeline.Science.Units;

/// <summary>Temperatures and temperature differences; the two convert differently.</summary>
/// <remarks>t/°C = (t/°F - 32) x 5/9; T/K = t/°C + 273.15; a difference has no offset. Exact by definition (SI Brochure; °F by NIST SP 811).</remarks>
public static class Temperature
{
    private const decimal AbsoluteZeroCelsius = -273.15m;

    /// <summary>°C from °F.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below absolute zero.</exception>
    public static decimal CelsiusFromFahrenheit(decimal fahrenheit) => NotBelowZero((fahrenheit - 32m) * 5m / 9m);

    /// <summary>°F from °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below absolute zero.</exception>
    public static decimal FahrenheitFromCelsius(decimal celsius) => (NotBelowZero(celsius) * 9m / 5m) + 32m;

    /// <summary>K from °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below absolute zero.</exception>
    public static decimal KelvinFromCelsius(decimal celsius) => NotBelowZero(celsius) - AbsoluteZeroCelsius;

    /// <summary>A difference in K (the same as in °C) from a difference in °F: 5 °F is 2.78 K, never -15 °C.</summary>
    public static decimal KelvinDifferenceFromFahrenheit(decimal fahrenheitDifference) => fahrenheitDifference * 5m / 9m;

    private static decimal NotBelowZero(decimal celsius) => celsius >= AbsoluteZeroCelsius
        ? celsius
        : throw Require.Out(celsius, "a temperature in degC", "no less than -273.15");
}
