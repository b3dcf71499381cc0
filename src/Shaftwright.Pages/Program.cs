using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Shaftwright.Pages;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");
builder.Services.AddSingleton(_ => new HttpClient
{
    BaseAddress = new Uri(builder.HostEnvironment.BaseAddress),
});
builder.Services.AddSingleton<DeviceStore>();
builder.Services.AddSingleton<Preferences>();
builder.Services.AddSingleton<JobShelf>();
builder.Services.AddSingleton<Sender>();
builder.Services.AddSingleton(TimeProvider.System);

var host = builder.Build();

// Everything that a page will need is fetched before the first one shows, because the network may go next.
await host.Services.GetRequiredService<DeviceStore>().Open();
await host.Services.GetRequiredService<Preferences>().Load();
await host.Services.GetRequiredService<JobShelf>().Load();
await host.Services.GetRequiredService<Sender>().Start();
await host.RunAsync();
