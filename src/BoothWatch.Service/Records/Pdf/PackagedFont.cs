using System.Reflection;
using System.Text;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Reads a font file out of the resources of the package that carries Inter; none of the package's code runs.</summary>
/// <remarks>
/// Layout of the resource: length of the index (Int32), the index (version 2 and count as Int32; for each file its path with its length
/// before it, offset and size as Int32), then the files.
/// </remarks>
internal static class PackagedFont
{
    private const string FileName = "fonts/Avalonia.Fonts.Inter.dll";
    private const string ResourceName = "!AvaloniaResources";
    private const int KnownVersion = 2;

    /// <summary>The bytes of a font.</summary>
    /// <param name="fileName">Its file name, for example <c>Inter-Regular.ttf</c>.</param>
    /// <exception cref="InvalidOperationException">The package does not hold it.</exception>
    public static byte[] Read(string fileName)
    {
        using Stream resource = Assembly.LoadFrom(Path.Combine(AppContext.BaseDirectory, FileName)).GetManifestResourceStream(ResourceName)
            ?? throw new InvalidOperationException($"{FileName} has no {ResourceName}");
        using BinaryReader reader = new(resource, Encoding.UTF8);
        int files = sizeof(int) + reader.ReadInt32();
        if (reader.ReadInt32() is var version && version != KnownVersion)
        {
            throw new InvalidOperationException($"the fonts of {FileName} are packed as version {version}; this program knows {KnownVersion}");
        }

        for (int count = reader.ReadInt32(); count > 0; count--)
        {
            string path = reader.ReadString();
            (int offset, int size) = (reader.ReadInt32(), reader.ReadInt32());
            if (path.EndsWith("/" + fileName, StringComparison.Ordinal))
            {
                resource.Position = files + offset;
                return reader.ReadBytes(size);
            }
        }

        throw new InvalidOperationException($"{FileName} has no {fileName}");
    }
}
