using System.Text;
using Microsoft.AspNetCore.StaticFiles;

namespace BoothWatch.Service.Page;

/// <summary>Maps the files of pages: one way for all, compressed once and tagged.</summary>
internal static class PageFiles
{
    private static readonly FileExtensionContentTypeProvider MediaTypes = new();

    /// <summary>Maps files that lie in the program under a folder of their own; a text file is UTF-8.</summary>
    /// <param name="app">Where to map them.</param>
    /// <param name="folder">Their folder in the program.</param>
    /// <param name="files">The address of each and its name.</param>
    /// <returns>The group of all of them, for what the gate shall know of it.</returns>
    /// <exception cref="InvalidOperationException">The build left a file out.</exception>
    public static RouteGroupBuilder MapFiles(this IEndpointRouteBuilder app, string folder, params (string Address, string Name)[] files)
    {
        RouteGroupBuilder group = app.MapGroup("").ExcludeFromDescription();
        string unit = app.ServiceProvider.GetRequiredService<DegreeText>().Unit;
        foreach ((string address, string name) in files)
        {
            string file = $"{folder}/{name}";
            byte[] bytes = Path.GetExtension(name) == ".html" ? Encoding.UTF8.GetBytes(PageAssets.ReadPage(file).Replace("{{unit}}", unit, StringComparison.Ordinal)) : PageAssets.Read(file);
            group.MapGet(address, new PageAsset(bytes, MediaTypeOf(name)).Answer);
        }

        return group;
    }

    private static string MediaTypeOf(string name)
    {
        string mediaType = MediaTypes.Mappings[Path.GetExtension(name)];
        return mediaType.StartsWith("text/", StringComparison.Ordinal) ? mediaType + "; charset=utf-8" : mediaType;
    }
}
