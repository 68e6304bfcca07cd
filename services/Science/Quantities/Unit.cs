namespace LabPipeline.Science.Quantities;

/// <summary>A unit as laboratories write it; <see cref="Symbol"/> is the spelling kept in the warehouse.</summary>
public sealed record Unit(string Symbol)
{
    public static readonly Unit GramPerLitre = new("g/L");
    public static readonly Unit MilligramPerDecilitre = new("mg/dL");
    public static readonly Unit MillimolePerLitre = new("mmol/L");
    public static readonly Unit MilligramPerGram = new("mg/g");
    public static readonly Unit Gram = new("g");
    public static readonly Unit Kilogram = new("kg");
    public static readonly Unit Milligram = new("mg");
    public static readonly Unit Pound = new("lb");
    public static readonly Unit Ounce = new("oz");
    public static readonly Unit Millilitre = new("mL");
    public static readonly Unit Litre = new("L");
    public static readonly Unit Celsius = new("degC");
    public static readonly Unit Fahrenheit = new("degF");
    public static readonly Unit Second = new("s");
    public static readonly Unit Minute = new("min");
    public static readonly Unit Percent = new("%");
    public static readonly Unit One = new("1");

    public override string ToString() => Symbol;
}
