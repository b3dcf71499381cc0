using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Shaftwright.Pages;
using Shaftwright.Pages.Bench;
using Shaftwright.Pages.Link;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton(_ => new HttpClient
{
    BaseAddress = new Uri(builder.HostEnvironment.BaseAddress),
    // A laptop that sleeps does not refuse, it says nothing; whatever waits is tried again.
    Timeout = TimeSpan.FromSeconds(30),
});
builder.Services.AddSingleton<DeviceStore>();
builder.Services.AddSingleton<Preferences>();
builder.Services.AddSingleton<JobShelf>();
builder.Services.AddSingleton<Sender>();
builder.Services.AddSingleton<LinkClient>();
builder.Services.AddSingleton<Standing>();
builder.Services.AddSingleton<OfflineCopy>();
builder.Services.AddSingleton<Photos>();
builder.Services.AddSingleton<BenchClock>();
builder.Services.AddSingleton(TimeProvider.System);

var host = builder.Build();

// Everything that a page will need is fetched before the first one shows, because the network may go next.
var device = host.Services.GetRequiredService<DeviceStore>();
var sender = host.Services.GetRequiredService<Sender>();
await device.Open();

// A device that has met no book yet has nothing to show and nowhere to keep anything: it waits for the laptop's answer. Where that
// is that it is not paired, pairing is all it can do. One that has met a book opens the one it had last, when no answer comes
// soon; should another be served, the page says so.
var patience = await device.KnowsBook() ? TimeSpan.FromSeconds(4) : TimeSpan.FromSeconds(30);
while (!await device.OpenBook(await sender.Served(patience)) && !sender.NotPaired)
    await Task.Delay(TimeSpan.FromSeconds(1));
await host.Services.GetRequiredService<Preferences>().Load();
await host.Services.GetRequiredService<BenchClock>().Open();
if (device.Book.Length > 0)
{
    await host.Services.GetRequiredService<JobShelf>().Load();
    await host.Services.GetRequiredService<Photos>().Open(device.Book);
    await sender.Start();
    _ = host.Services.GetRequiredService<Standing>().Ask();
}
_ = host.Services.GetRequiredService<OfflineCopy>().Start();
await host.RunAsync();
