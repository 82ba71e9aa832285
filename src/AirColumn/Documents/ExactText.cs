using System.Globalization;

namespace AirColumn.Documents;

/// <summary>Writes quantities so that reading them gives the same number again.</summary>
internal static class ExactText
{
    /// <summary>The shortest text of a number that reads back as the same one.</summary>
    public static string Of(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A length, in millimetres where that reads back as the same number of metres.</summary>
    public static string Metres(double metres) =>
        Of(metres, text => QuantityText.ParseLength(text).Meters, (metres * 1000, "mm"), (metres, "m"));

    /// <summary>
    /// The first of several ways of writing a quantity that reads back as the same value; the last one if none does.
    /// </summary>
    /// <param name="si">The value that must come back.</param>
    /// <param name="read">Reads a text to such a value.</param>
    /// <param name="units">The quantity in one or more units.</param>
    public static string Of(double si, Func<string, double> read, params (double Value, string Unit)[] units)
    {
        var last = "";
        foreach (var (value, unit) in units)
        {
            // First without the last digits: conversion leaves them astray, 30 mm is 30.000000000000004 mm.
            foreach (var format in (string[])["G15", "R"])
            {
                last = $"{value.ToString(format, CultureInfo.InvariantCulture)} {unit}";
                if (read(last) == si)
                {
                    return last;
                }
            }
        }

        return last;
    }
}
