using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>Real touches over the chart, through the browser's own input; places are in pixels from the left and top of the chart.</summary>
internal sealed class Touch
{
    private readonly ICDPSession _devTools;
    private readonly LocatorBoundingBoxResult _area;

    private Touch(ICDPSession devTools, LocatorBoundingBoxResult area, LocatorBoundingBoxResult plot) =>
        (_devTools, _area, PlotLeft, PlotWidth) = (devTools, area, plot.X - area.X, plot.Width);

    public double PlotLeft { get; }

    public double PlotWidth { get; }

    public static async Task<Touch> On(Tab tab)
    {
        ICDPSession devTools = await tab.Page.Context.NewCDPSessionAsync(tab.Page);
        await devTools.SendAsync("Emulation.setTouchEmulationEnabled", new Dictionary<string, object> { ["enabled"] = true, ["maxTouchPoints"] = 5 });
        return new Touch(
            devTools, (await tab.Page.Locator(".area").BoundingBoxAsync())!, (await tab.Page.Locator(".plot.degrees .u-over").BoundingBoxAsync())!);
    }

    public Task Down(params (double X, double Y)[] fingers) => Send("touchStart", fingers);

    public Task Move(params (double X, double Y)[] fingers) => Send("touchMove", fingers);

    public Task Up() => Send("touchEnd", []);

    private async Task Send(string type, (double X, double Y)[] fingers) => await _devTools.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
    {
        ["type"] = type,
        ["touchPoints"] = fingers.Select((finger, i) => new Dictionary<string, object> { ["x"] = _area.X + finger.X, ["y"] = _area.Y + finger.Y, ["id"] = i }).ToArray(),
    });
}
